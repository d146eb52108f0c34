// The search for lines finds what was planted: its figures are what simulated strikes are judged by.
import { expect, test } from 'vitest';
import { linesNear } from './near-lines';

const sampleRate = 44100;

function lines(...planted: readonly [hz: number, amplitude: number, decay: number][]) {
  const samples = Float32Array.from({ length: sampleRate }, (_, n) => {
    const time = n / sampleRate;
    return planted.reduce(
      (sum, [hz, amplitude, decay], k) =>
        sum + amplitude * Math.exp(-time / decay) * Math.sin(2 * Math.PI * hz * time + k),
      0,
    );
  });
  return linesNear({ samples, sampleRate }, 440, 0.1, 0.588).filter(({ db }) => db > -20);
}

test('finds one line with its frequency and time constant', () => {
  const found = lines([441.3, 0.4, 0.2]);
  expect(found).toHaveLength(1);
  expect(found[0]?.hz).toBeCloseTo(441.3, 2);
  expect(found[0]?.decaySeconds).toBeCloseTo(0.2, 2);
});

test('finds two lines 5 Hz apart, the weaker one 8 dB down', () => {
  const found = lines([438, 0.4, 0.2], [443, 0.16, 0.2]);
  expect(found).toHaveLength(2);
  expect(found[0]?.hz).toBeCloseTo(438, 1);
  expect(found[1]?.hz).toBeCloseTo(443, 1);
  expect(found[1]?.db).toBeCloseTo(-8, 0);
});

test('does not take the octave or a note four semitones up for a line at the fundamental', () => {
  expect(lines([440, 0.4, 0.2], [880, 0.4, 0.2], [554.4, 0.3, 0.3])).toHaveLength(1);
});
