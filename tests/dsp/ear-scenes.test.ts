// The benchmark's scenes in small, with the same targets: what the ear has reached must not be lost.
import { describe, expect, it } from 'vitest';
import { detectorErrors } from '../benchmarks/ear/compare-detectors';
import { doubletCounts } from '../benchmarks/ear/doublets';
import { generalDetectors } from '../benchmarks/ear/general-detectors';
import { errorsOf, guidedTo, hearAll } from '../benchmarks/ear/hear-scene';
import { isolatedPoints } from '../benchmarks/ear/isolated-line';
import { seedsFrom } from '../benchmarks/ear/seeds';
import { rms, worst } from '../benchmarks/ear/statistics';
import { noteOutcome, wrongNoteOutcome } from '../benchmarks/ear/which-note';
import { strikeScene } from '../sounds/scene';

const scenes = seedsFrom(1, 40).map((seed) => strikeScene(seed));
const guided = hearAll(scenes, ({ truth }) => guidedTo(truth.note));
const errors = (partial: 'fundamental' | 'octave') =>
  guided.flatMap((each) => errorsOf(each)[partial] ?? []);

describe('a single line in white noise', () => {
  const points = isolatedPoints({
    notes: [60, 72, 84],
    snrsDb: [30],
    windows: [0.6],
    sampleRates: [44100, 48000],
    trials: 500,
  });

  it.each(points)(
    'of note $note is measured within 1.15 times the bound, without bias',
    (point) => {
      expect(point.refused).toBe(0);
      expect(point.rms, `RMS error / bound ${point.rms.toFixed(3)}`).toBeLessThanOrEqual(1.15);
      expect(Math.abs(point.bias), `bias / bound ${point.bias.toFixed(3)}`).toBeLessThan(0.2);
    },
  );
});

describe('a full scene', () => {
  it.each(['fundamental', 'octave'] as const)('has its %s never more than 1 cent off', (name) => {
    const all = errors(name);
    expect(all.length).toBeGreaterThan(scenes.length / 2);
    const most = worst(all.map(({ error }) => error));
    expect(most, `worst ${most.toFixed(3)} cent`).toBeLessThanOrEqual(1);
  });

  it('is measured at least 30 times better than by a general-purpose detector', async () => {
    const measured = guided.filter((each) => errorsOf(each).fundamental !== null);
    const own = rms(errors('fundamental').map(({ error }) => error));
    const [mcLeod] = await generalDetectors();
    if (!mcLeod) throw new Error('no detector');
    const theirs = rms(
      detectorErrors(
        mcLeod,
        measured.map(({ scene }) => scene),
      ).errors,
    );
    expect(theirs / own, `${theirs.toFixed(1)} against ${own.toFixed(3)}`).toBeGreaterThan(30);
  });
});

describe('two lines at the octave', () => {
  it('are not reported where there is one', () => {
    const singles = doubletCounts(seedsFrom(2001, 20), false);
    expect(singles.asTwo).toBe(0);
    expect(singles.refused).toBeLessThan(10);
  });
});

describe('the struck note', () => {
  it('is never taken for another one in the guided order', () => {
    const outcomes = guided.map(({ scene, heard }) => noteOutcome(scene.truth.note, heard));
    expect(outcomes).not.toContain('wrong');
  });

  it('is never recorded as the expected one where that is another', () => {
    expect(scenes.map(wrongNoteOutcome)).not.toContain('recorded');
  });
});
