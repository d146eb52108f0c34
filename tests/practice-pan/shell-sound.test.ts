import { expect, it } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { addBurst, addModes, modesOf } from '../../src/practice-pan/shell-sound';

const sampleRate = 48000;

it('adds each mode as its formula says', () => {
  const mode = { hz: 2345.6, amplitude: 0.7, decaySeconds: 0.08, bloomSeconds: 0.006, phase: 1.1 };
  const sound = new Float32Array(0.4 * sampleRate);
  addModes(sound, sampleRate, 0.1, [mode], 0.5);
  const expected = (n: number): number => {
    const time = n / sampleRate - 0.1;
    if (time < 0) return 0;
    const rise = 1 - Math.exp(-time / mode.bloomSeconds);
    const wave = Math.sin(2 * Math.PI * mode.hz * time + mode.phase);
    return 0.5 * mode.amplitude * rise * Math.exp(-time / mode.decaySeconds) * wave;
  };
  const farthest = sound.reduce(
    (most, value, n) => Math.max(most, Math.abs(value - expected(n))),
    0,
  );
  expect(farthest).toBeLessThan(1e-6);
});

it('draws modes within their band whose powers add up to one, the same for the same seed', () => {
  const band = {
    count: 30,
    lowHz: 1700,
    highHz: 5500,
    decaySeconds: [0.04, 0.16],
    bloomSeconds: 0.01,
  } as const;
  const modes = modesOf(seededRandom(4), band);
  expect(modes).toHaveLength(30);
  expect(modes.every(({ hz }) => hz >= 1700 && hz <= 5500)).toBe(true);
  expect(modes.reduce((sum, { amplitude }) => sum + amplitude ** 2, 0)).toBeCloseTo(1, 9);
  expect(modesOf(seededRandom(4), band)).toEqual(modes);
});

it('adds a burst that begins with its level and dies away with its time constant', () => {
  const power = (from: number, to: number): number => {
    let sum = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const sound = new Float32Array(0.05 * sampleRate);
      const burst = { level: 0.3, seconds: 0.01, brightHz: 9000 };
      addBurst(sound, sampleRate, 0, burst, seededRandom(seed));
      for (let n = from; n < to; n++) sum += (sound[n] ?? 0) ** 2 / (to - from) / 200;
    }
    return sum;
  };
  const after = (seconds: number): number => Math.round(seconds * sampleRate);
  const early = power(after(0.001), after(0.002));
  expect(Math.sqrt(early)).toBeGreaterThan(0.22);
  expect(Math.sqrt(early)).toBeLessThan(0.32);
  // Two hundredths of a second later: two time constants, in power four.
  const later = power(after(0.021), after(0.022));
  expect(Math.log(early / later)).toBeCloseTo(4, 0);
});
