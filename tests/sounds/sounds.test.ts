import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { clap, rimKnock, woodenKnock } from './knock';
import { pinkNoise, speechLikeNoise, whiteNoise } from './noise';
import { strikeScene } from './scene';

const sampleRate = 48000;
const power = (sound: Float32Array): number =>
  sound.reduce((sum, value) => sum + value * value, 0) / sound.length;

/** Power at `hz` in a Hann window over the whole sound. */
function powerAt(sound: Float32Array, hz: number): number {
  let real = 0;
  let imaginary = 0;
  sound.forEach((value, n) => {
    const hann = 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / sound.length);
    const angle = (2 * Math.PI * hz * n) / sampleRate;
    real += value * hann * Math.cos(angle);
    imaginary += value * hann * Math.sin(angle);
  });
  return (real * real + imaginary * imaginary) / sound.length;
}

/** Mean power density around `hz`, dB. */
const densityDb = (sound: Float32Array, hz: number): number => {
  const bins = Array.from({ length: 40 }, (_, k) => powerAt(sound, hz * (0.9 + 0.005 * k)));
  return 10 * Math.log10(bins.reduce((sum, value) => sum + value, 0) / bins.length);
};

describe('sounds for tests', () => {
  it.each([
    ['white', whiteNoise, 0],
    ['pink', pinkNoise, -9],
  ] as const)('%s noise has unit power and its own slope over three octaves', (_, make, slope) => {
    const sound = make(seededRandom(5), sampleRate, 1);
    expect(Math.abs(power(sound) - 1)).toBeLessThan(0.3);
    const fall = densityDb(sound, 3200) - densityDb(sound, 400);
    expect(Math.abs(fall - slope), `slope ${fall.toFixed(1)} dB`).toBeLessThan(3);
  });

  it.each([
    ['speech', speechLikeNoise],
    ['wooden knock', woodenKnock],
    ['clap', clap],
    ['rim knock', rimKnock],
  ] as const)('%s peaks at 1 and comes out the same for the same seed', (_, make) => {
    const sound = make(seededRandom(6), sampleRate, 0.8);
    const peak = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(peak).toBeCloseTo(1, 6);
    expect(make(seededRandom(6), sampleRate, 0.8)).toEqual(sound);
  });

  it.each([
    ['wooden knock', woodenKnock],
    ['clap', clap],
    ['rim knock', rimKnock],
  ] as const)('a %s is over within 0.25 s', (_, make) => {
    for (let seed = 1; seed <= 10; seed++) {
      const sound = make(seededRandom(seed), sampleRate, 0.5);
      expect(power(sound.subarray(12000)) / power(sound.subarray(0, 12000))).toBeLessThan(1e-4);
    }
  });

  it('a scene is quiet before its strike and has its partials where its truth says', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const { samples, truth } = strikeScene(seed, { sampleRate, snrDb: 60, wobbleDb: 0 });
      const from = Math.round((truth.at + 0.2) * sampleRate);
      const settled = samples.subarray(from, from + 19200);
      const before = samples.subarray(0, Math.round(truth.at * sampleRate));
      expect(power(before)).toBeLessThan(0.01 * power(samples));
      for (const hz of [truth.fundamental.hz, truth.octave.hz]) {
        const beside = Math.max(powerAt(settled, hz * 1.015), powerAt(settled, hz / 1.015));
        expect(powerAt(settled, hz) / beside, `seed ${seed}, ${hz} Hz`).toBeGreaterThan(3);
      }
    }
  });
});
