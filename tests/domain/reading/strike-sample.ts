// Strikes with given cents, for tests of what follows the ear.
import type { Loudness, Strike } from '../../../src/domain/measurement/strike';
import { cents, decibels, hertz, midiNote, seconds } from '../../../src/domain/tuning/units';

export interface StrikeSketch {
  readonly event?: number;
  readonly note?: number;
  readonly provisional?: boolean;
  readonly fundamental?: number;
  readonly octave?: number | null;
  readonly third?: number | null;
  /** The twelfth unless told otherwise. */
  readonly thirdKind?: 'twelfth' | 'double-octave';
  readonly sigma?: number;
  /** A second line at the octave, against the own fundamental; `rivalNote` is the partner. */
  readonly rival?: number;
  readonly rivalNote?: number | null;
  /** Its fundamental is then as unsure as the ear says (10 cents), its partials are not. */
  readonly isInferred?: boolean;
  readonly loudness?: Loudness;
}

const alignmentSigma = 10;

/** A settled D5 unless told otherwise; cents of octave and third are against the own fundamental. */
export function strikeSample(sketch: StrikeSketch = {}): Strike {
  const { event = 1, note = 74, provisional = false, sigma = 0.1, isInferred = false } = sketch;
  const { fundamental = 0, octave = 0, third = 0, rival, rivalNote = note + 12 } = sketch;
  const partial = (value: number) => ({
    hz: hertz(587.33),
    cents: cents(value),
    sigmaCents: cents(sigma),
    decaySeconds: seconds(0.3),
    levelDb: decibels(-20),
  });
  const upper = (value: number) => ({
    ...partial(fundamental + value),
    centsFromOwn: cents(value),
  });
  return {
    kind: 'strike',
    event,
    provisional,
    at: seconds(event),
    note: midiNote(note),
    fundamental: {
      ...partial(fundamental),
      sigmaCents: cents(isInferred ? Math.hypot(sigma, alignmentSigma) : sigma),
    },
    isInferred,
    octave: octave === null ? null : upper(octave),
    octaveRival:
      rival === undefined
        ? null
        : {
            ...upper(rival),
            note: rivalNote === null ? null : midiNote(rivalNote),
            beatHz: hertz(Math.abs(rival - (octave ?? 0)) * 0.68),
          },
    loudness: sketch.loudness ?? 'good',
    third: third === null ? null : { kind: sketch.thirdKind ?? 'twelfth', ...upper(third) },
    glideCents: cents(5),
    peakDb: decibels(-10),
    alsoRinging: [],
  };
}
