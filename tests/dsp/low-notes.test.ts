// Bass notes whose fundamental the phone does not hear, and those an octave above it.
import { describe, expect, it } from 'vitest';
import type { Heard } from '../../src/domain/measurement/strike';
import { type MidiNote, midiNote } from '../../src/domain/tuning/units';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote } from '../../src/practice-pan/struck-note';
import { pinkNoise } from '../sounds/noise';
import { anyNote, finallyHeard } from './listen-to';

const sampleRate = 44100;
/** Equal temperament from A4 = 440 Hz: B0 is 30.868 Hz (published check value). */
const b0 = 30.868;
const twelveBass: readonly MidiNote[] = Array.from({ length: 36 }, (_, n) => midiNote(23 + n));

interface Line {
  readonly hz: number;
  readonly level: number;
  readonly bloom: number;
}

/** Lines struck at 0.3 s in a little pink noise. */
function struck(seed: number, lines: readonly Line[]): Float32Array {
  const random = seededRandom(seed);
  const samples = pinkNoise(random, sampleRate, 1.5).map((value) => 5e-4 * value);
  const partials = lines.map(({ hz, level, bloom }) => ({
    hz,
    amplitude: level,
    decaySeconds: 0.5,
    bloomSeconds: bloom,
    glideCents: 8,
    glideSeconds: 0.04,
    phase: 2 * Math.PI * random(),
  }));
  addStruckNote(samples, sampleRate, 0.3, { partials, onset: 0.002 }, 0.2);
  return samples;
}

/** B0 of which only partials 2 and `times` are heard. */
const withoutFundamental = (seed: number, times: 3 | 4): Float32Array =>
  struck(seed, [
    { hz: 2 * b0 * 2 ** (6 / 1200), level: 0.5, bloom: 0.025 },
    { hz: times * b0 * 2 ** (4 / 1200), level: 0.4, bloom: 0.012 },
  ]);

/** B1 with its own fundamental, octave and double octave: the first two are B0's octave and double octave too. */
const b1 = (seed: number): Float32Array =>
  struck(seed, [
    { hz: 2 * b0, level: 1, bloom: 0.001 },
    { hz: 4 * b0, level: 0.5, bloom: 0.025 },
    { hz: 8 * b0, level: 0.2, bloom: 0.012 },
  ]);

const heardOf = (samples: Float32Array, expected: number | null): Heard | undefined =>
  finallyHeard(samples, sampleRate, {
    ...anyNote,
    notes: twelveBass,
    expected: expected === null ? null : midiNote(expected),
  })[0];

const seeds = [1, 2, 3, 4, 5];

describe('a bass note without an audible fundamental', () => {
  it.each(seeds)(
    'is inferred from octave and double octave or twelfth, guided (seed %i)',
    (seed) => {
      for (const times of [3, 4] as const) {
        const heard = heardOf(withoutFundamental(seed, times), 23);
        expect(heard).toMatchObject({ kind: 'strike', note: 23, isInferred: true });
        if (heard?.kind !== 'strike') return;
        // Octave 6 cents sharp and third partial 4: between them.
        expect(heard.fundamental.cents).toBeGreaterThan(4);
        expect(heard.fundamental.cents).toBeLessThan(6);
        expect(heard.octave?.cents).toBeCloseTo(6, 0);
        expect(heard.third?.kind).toBe(times === 3 ? 'twelfth' : 'double-octave');
      }
    },
  );

  it('says how uncertain an inferred fundamental is: published octaves lie up to 17 cents off', () => {
    const heard = heardOf(withoutFundamental(1, 4), 23);
    expect(heard?.kind === 'strike' && heard.fundamental.sigmaCents).toBeGreaterThan(17.4 / 2);
  });

  it.each(seeds)('is not given another name without a hint (seed %i)', (seed) => {
    const heard = heardOf(withoutFundamental(seed, 4), null);
    const names =
      heard?.kind === 'strike' ? [heard.note] : heard?.kind === 'refused' ? heard.candidates : [];
    expect(names).toContain(23);
  });

  it('is not inferred from the octave alone', () => {
    const octave = [{ hz: 2 * b0, level: 0.5, bloom: 0.025 }];
    expect(heardOf(struck(1, octave), 23)?.kind).not.toBe('strike');
  });
});

describe('a bass note with its own fundamental', () => {
  it.each(seeds)('is heard as itself (seed %i)', (seed) => {
    for (const expected of [null, 35]) {
      const heard = heardOf(b1(seed), expected);
      expect(heard).toMatchObject({ kind: 'strike', note: 35, isInferred: false });
    }
  });

  it.each(seeds)(
    'is never taken for the note an octave below that is expected (seed %i)',
    (seed) => {
      expect(heardOf(b1(seed), 23)).toMatchObject({
        kind: 'refused',
        reason: 'wrong-note',
        note: 35,
      });
    },
  );
});
