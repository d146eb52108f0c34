// The benchmark's scenes in small, with the same targets: what the ear has reached must not be lost.
import { describe, expect, it } from 'vitest';
import { centsBetween } from '../../src/domain/tuning/units';
import { detectorErrors } from '../ear-scenes/compare-detectors';
import { doubletCounts } from '../ear-scenes/doublets';
import { generalDetectors } from '../ear-scenes/general-detectors';
import { errorsOf, guidedTo, hearAll, panOnly } from '../ear-scenes/hear-scene';
import { isolatedPoints } from '../ear-scenes/isolated-line';
import { seedsFrom } from '../ear-scenes/seeds';
import { percentOf, rms, worst } from '../ear-scenes/statistics';
import { noteOutcome, wrongNoteOutcome } from '../ear-scenes/which-note';
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
    trials: 300,
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
  it.each(['fundamental', 'octave'] as const)('has its %s within 0.15 cent', (name) => {
    const near = errors(name).filter(({ error }) => Math.abs(error) <= 0.15).length;
    // The target is 95 of 100. With so many in truth, 40 scenes have fewer than 36 once in 20 draws (binomial).
    // What was not measured is not within.
    expect(near, `${near} of ${scenes.length}`).toBeGreaterThanOrEqual(0.9 * scenes.length);
  });

  it.each(['fundamental', 'octave'] as const)('has its %s never more than 1 cent off', (name) => {
    const all = errors(name);
    expect(all.length).toBeGreaterThan(scenes.length / 2);
    const most = worst(all.map(({ error }) => error));
    expect(most, `worst ${most.toFixed(3)} cent`).toBeLessThanOrEqual(1);
  });

  it('states errors that hold: the truth lies within two of them in about 95 of 100', () => {
    const both = [...errors('fundamental'), ...errors('octave')];
    const within = (sigmas: number): number =>
      percentOf(both, ({ error, sigma }) => Math.abs(error) <= sigmas * sigma);
    // A normal error has 95.4 and 68.3 %; 80 errors scatter by 2.3 and 5.2 %, one standard deviation.
    expect(within(2), `${within(2).toFixed(1)} %`).toBeGreaterThanOrEqual(90);
    // Set on real strikes, which stray more: wider than these scenes need (target 93 to 97).
    expect(within(1), `${within(1).toFixed(1)} %`).toBeGreaterThan(57);
  });

  it('has a third only where one sounds, within 2 cents of it', () => {
    const far = guided.filter(({ scene, heard }) => {
      if (heard?.kind !== 'strike' || !heard.third) return false;
      const { third, thirdKind } = scene.truth;
      const away = centsBetween(third?.hz ?? 1, heard.third.hz);
      return heard.third.kind !== thirdKind || Math.abs(away) >= 2;
    });
    // The target is none.
    expect(far.length, `${far.length} of ${guided.length}`).toBeLessThanOrEqual(4);
    const found = guided.filter((each) => errorsOf(each).third !== null).length;
    expect(found).toBeGreaterThan(scenes.length / 2);
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
  it('are both reported, each within 1 cent', () => {
    const pairs = doubletCounts(seedsFrom(1001, 20), true);
    // The targets are none refused and all right.
    expect(pairs.refused).toBeLessThanOrEqual(3);
    // The target is 98 of 100: one of 20 may be missed.
    expect(pairs.asTwo).toBeGreaterThanOrEqual(16);
    expect(pairs.bothRight).toBeGreaterThanOrEqual(pairs.asTwo - 3);
  });

  it('are not reported where there is one', () => {
    const singles = doubletCounts(seedsFrom(2001, 20), false);
    expect(singles.asTwo).toBe(0);
    expect(singles.refused).toBeLessThan(10);
  });
});

describe('the struck note', () => {
  it('is named without a hint, with all notes of the pan as candidates', () => {
    const outcomes = hearAll(scenes, () => panOnly).map(({ scene, heard }) =>
      noteOutcome(scene.truth.note, heard),
    );
    expect(outcomes).not.toContain('wrong');
    expect(percentOf(outcomes, (each) => each === 'right')).toBeGreaterThanOrEqual(95);
  });

  it('is taken in the guided order, every time', () => {
    const outcomes = guided.map(({ scene, heard }) => noteOutcome(scene.truth.note, heard));
    // The target is every time.
    const others = outcomes.filter((each) => each !== 'right');
    expect(others.length, others.join(', ')).toBeLessThanOrEqual(4);
  });

  it('is refused by its name, every time, where another one is expected', () => {
    expect(new Set(scenes.map(wrongNoteOutcome))).toEqual(new Set(['refused by name']));
  });
});
