import { describe, expect, it } from 'vitest';
import type { Heard, Strike } from '../../src/domain/measurement/strike';
import { centsBetween } from '../../src/domain/tuning/units';
import * as fc from '../properties';
import { strikeScene } from '../sounds/scene';
import { anyNote, everythingHeard, finallyHeard } from './listen-to';

/**
 * Where the noise is the same nothing should move at all, and where it is another one the difference
 * stays within three standard errors of a difference 369 times in 370; the seeds are fixed.
 */
const standardErrors = 3;

const sampleRate = 48000;
const seeds: readonly number[] = [2, 3, 5];
/** One strike with a glide, exchange and two neighbours, 30 dB above a pink noise. */
const scene = (seed: number, rate = sampleRate) =>
  strikeScene(seed, { sampleRate: rate, snrDb: 30, sympathetic: 2, wobbleDb: 3 });
const scenes = new Map(seeds.map((seed) => [seed, scene(seed).samples]));
const anySeed = fc.constantFrom(...seeds);
const runs = { seed: 20, numRuns: 12 } as const;

function strikeIn(samples: Float32Array, rate = sampleRate, block?: number): Strike {
  const heard =
    block === undefined
      ? finallyHeard(samples, rate)
      : everythingHeard(samples, rate, anyNote, block).filter(
          (each) => each.kind !== 'strike' || !each.provisional,
        );
  const strikes = heard.filter((each): each is Strike => each.kind === 'strike');
  const [only] = strikes;
  if (!only || strikes.length !== 1) throw new Error(`heard ${JSON.stringify(heard)}`);
  return only;
}

const references = new Map<number, Strike>();
function referenceOf(seed: number): Strike {
  const reference = references.get(seed) ?? strikeIn(scenes.get(seed) ?? new Float32Array());
  references.set(seed, reference);
  return reference;
}

/** Fundamental and octave have not moved beyond their standard errors, and the note is the same. */
function expectUnmoved(strike: Strike, reference: Strike): void {
  expect(strike.note).toBe(reference.note);
  for (const partial of ['fundamental', 'octave'] as const) {
    const [now, before] = [strike[partial], reference[partial]];
    if (!now || !before) throw new Error(`no ${partial}`);
    const moved = Math.abs(centsBetween(before.hz, now.hz));
    const limit = standardErrors * Math.hypot(now.sigmaCents, before.sigmaCents);
    expect(moved, `${partial} moved by ${moved.toFixed(4)} cent`).toBeLessThan(limit);
  }
}

/** `samples` with `count` samples of silence before or after them. */
function padded(samples: Float32Array, before: number, after: number): Float32Array {
  const whole = new Float32Array(before + samples.length + after);
  whole.set(samples, before);
  return whole;
}

describe('a measured strike does not move', () => {
  const samplesOf = (seed: number): Float32Array => scenes.get(seed) ?? new Float32Array();

  it('with the gain, as long as nothing clips', () => {
    fc.assert(
      fc.property(anySeed, fc.double({ min: -30, max: 6, noNaN: true }), (seed, db) => {
        const samples = samplesOf(seed);
        const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
        const gain = Math.min(10 ** (db / 20), 0.9 / peak);
        const louder = samples.map((value) => gain * value);
        expectUnmoved(strikeIn(louder), referenceOf(seed));
      }),
      runs,
    );
  });

  it('with the polarity', () => {
    for (const seed of seeds) {
      expectUnmoved(strikeIn(samplesOf(seed).map((value) => -value)), referenceOf(seed));
    }
  });

  it('with a delay of any number of samples and any size of blocks', () => {
    fc.assert(
      fc.property(
        anySeed,
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: 1, max: 20000 }),
        (seed, delay, block) => {
          const later = samplesOf(seed).subarray(delay);
          expectUnmoved(strikeIn(later, sampleRate, block), referenceOf(seed));
        },
      ),
      runs,
    );
  });

  it('with silence before and after', () => {
    fc.assert(
      fc.property(
        anySeed,
        fc.integer({ min: 0, max: 60000 }),
        fc.integer({ min: 0, max: 60000 }),
        (seed, before, after) => {
          const longer = padded(samplesOf(seed), before, after);
          expectUnmoved(strikeIn(longer), referenceOf(seed));
        },
      ),
      runs,
    );
  });

  it('with a constant offset', () => {
    fc.assert(
      fc.property(anySeed, fc.double({ min: -0.05, max: 0.05, noNaN: true }), (seed, offset) => {
        const moved = samplesOf(seed).map((value) => value + offset);
        expectUnmoved(strikeIn(moved), referenceOf(seed));
      }),
      runs,
    );
  });

  it.each([32000, 44100, 96000])('with the sample rate (%i Hz)', (rate) => {
    for (const seed of seeds) {
      expectUnmoved(strikeIn(scene(seed, rate).samples, rate), referenceOf(seed));
    }
  });
});

describe('no input is too odd', () => {
  const oddValue = fc.oneof(
    fc.float(),
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
    fc.constantFrom(0, -0, 1, -1, 1e-40, -1e-45, 3.4e38),
  );
  const isWellFormed = (heard: Heard): boolean =>
    heard.kind !== 'strike' ||
    [heard.fundamental.hz, heard.fundamental.cents, heard.fundamental.sigmaCents, heard.at].every(
      Number.isFinite,
    );
  /** Never throws, never says NaN; that it never hangs is the test's own timeout. */
  const expectSense = (samples: Float32Array, rate = sampleRate, block = samples.length): void => {
    const heard = everythingHeard(samples, rate, anyNote, Math.max(1, block));
    expect(heard.every(isWellFormed), JSON.stringify(heard)).toBe(true);
  };

  it('whatever the values', () => {
    fc.assert(
      fc.property(fc.array(oddValue, { maxLength: 300 }), fc.nat(40000), (values, repeats) => {
        const samples = Float32Array.from(
          { length: Math.min(60000, values.length + repeats) },
          (_, n) => values[n % Math.max(1, values.length)] ?? 0,
        );
        expectSense(samples, sampleRate, 4096);
      }),
      { seed: 21, numRuns: 40 },
    );
  });

  it('whatever is scattered over a strike', () => {
    fc.assert(
      fc.property(
        anySeed,
        fc.array(fc.tuple(fc.nat(76000), oddValue), { minLength: 1, maxLength: 200 }),
        (seed, specks) => {
          const samples = (scenes.get(seed) ?? new Float32Array()).slice();
          for (const [at, value] of specks) samples[at] = value;
          expectSense(samples);
        },
      ),
      { seed: 22, numRuns: 25 },
    );
  });

  it.each([
    ['nothing', new Float32Array(0)],
    ['one sample', new Float32Array(1).fill(1)],
    ['zeros', new Float32Array(200_000)],
    ['subnormal numbers', new Float32Array(200_000).fill(1e-42)],
    [
      'a full square wave',
      Float32Array.from({ length: 200_000 }, (_, n) => (n % 109 < 54 ? 1 : -1)),
    ],
    ['a full constant', new Float32Array(200_000).fill(1)],
    ['clicks', Float32Array.from({ length: 200_000 }, (_, n) => (n % 4800 === 0 ? 1 : 0))],
    [
      'a swept sine',
      Float32Array.from({ length: 200_000 }, (_, n) => 0.5 * Math.sin(1e-6 * n * n)),
    ],
  ])('%s', (_, samples) => {
    expectSense(samples);
    for (const rate of [8000, 44100, 192000]) expectSense(samples, rate, 4096);
  });
});
