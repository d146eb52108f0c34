// What a hard scene says of itself is what is in its samples, found without the ear.
import { describe, expect, test } from 'vitest';
import { centsBetween, hertz } from '../../src/domain/tuning/units';
import { linesNear } from '../strike-statistics/near-lines';
import { powerSpectrum, strongestBetween } from '../strike-statistics/power-spectrum';
import { type HardScene, hardScene, studio } from './hard-scene';

const scenes = (strength: number | null): readonly HardScene[] =>
  Array.from({ length: 30 }, (_, n) => hardScene(n + 1, { ...studio, strength, seconds: 1 }));
const anyStrength = scenes(null);
const hardest = scenes(1);

describe('a hard scene', () => {
  test('is the same for the same seed and another for another', () => {
    const [once, again, other] = [hardScene(7), hardScene(7), hardScene(8)];
    expect(once.samples).toEqual(again.samples);
    expect(once.truth).toEqual(again.truth);
    expect(other.truth.fundamental.hz).not.toBe(once.truth.fundamental.hz);
  });

  test('has a single fundamental where it says so', () => {
    const errors = anyStrength
      .filter(({ truth }) => truth.lines.fundamental.length === 1)
      .map((scene) => {
        const { at, fundamental } = scene.truth;
        const { hz } = fundamental;
        const late = powerSpectrum(scene, at + 0.15, at + 0.7, 2 ** 17, 'hann');
        return Math.abs(
          centsBetween(hertz(hz), hertz(strongestBetween(late, 0.985 * hz, 1.015 * hz))),
        );
      })
      .sort((a, b) => a - b);
    expect(errors.length).toBeGreaterThan(10);
    // Energy exchange moves the peak of a plain spectrum a little; a line planted elsewhere would be many cents off.
    expect(errors[errors.length >> 1], `cents: ${errors.join(' ')}`).toBeLessThan(0.7);
    expect(errors[Math.floor(0.9 * errors.length)], `cents: ${errors.join(' ')}`).toBeLessThan(3);
  });

  test('has both lines of a pair at the fundamental where it says so', () => {
    const found = [...anyStrength, ...hardest].flatMap((scene) => {
      const { at, fundamental, lines } = scene.truth;
      const [own = 0, second] = lines.fundamental;
      // Nearer ones cannot be told apart while they ring.
      if (second === undefined || Math.abs(second - own) < 3.5) return [];
      const heard = linesNear(scene, fundamental.hz, at + 0.12, at + 0.7);
      return [
        [own, second].every((hz) =>
          heard.some((line) => line.db > -25 && Math.abs(line.hz - hz) < 0.6),
        ),
      ];
    });
    expect(found.length).toBeGreaterThan(15);
    const share = found.filter(Boolean).length / found.length;
    expect(share, `${found.length} pairs`).toBeGreaterThan(0.8);
  });

  test('begins at its onset and is silent before it but for the noise', () => {
    for (const { samples, sampleRate, truth } of anyStrength) {
      const onset = Math.round(truth.at * sampleRate);
      const loudest = (from: number, to: number): number =>
        samples.subarray(from, to).reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      const before = loudest(0, onset);
      expect(before).toBeLessThan(6 * truth.noise);
      expect(loudest(onset, onset + Math.round(0.03 * sampleRate))).toBeGreaterThan(2 * before);
      expect(loudest(0, samples.length)).toBeLessThan(1);
    }
  });

  test('starts sharper the harder the stroke', () => {
    const glides = (of: readonly HardScene[]): number[] =>
      of.map(({ truth }) => Math.abs(truth.glideCents));
    const mean = (values: readonly number[]): number =>
      values.reduce((sum, value) => sum + value, 0) / values.length;
    const soft = scenes(0.2);
    expect(mean(glides(hardest))).toBeGreaterThan(4 * mean(glides(soft)));
    expect(Math.max(...glides(hardest))).toBeGreaterThan(70);
  });

  test('holds only what it was asked for', () => {
    const scene = hardScene(3, { note: 64, strength: 0.4, room: 'garage', sampleRate: 44100 });
    expect(scene.truth).toMatchObject({ note: 64, strength: 0.4, room: 'garage' });
    expect(scene.sampleRate).toBe(44100);
  });
});
