// The one thing to say about a note: the most important fault, or that there is none.
import type { ThirdKind } from '../measurement/strike';
import { goodTolerances, type Tolerances } from './tolerances';
import type { Cents, MidiNote } from './units';

export type Verdict =
  | { readonly kind: 'flat' | 'sharp'; readonly cents: Cents }
  | { readonly kind: 'octave-flat' | 'octave-sharp'; readonly cents: Cents }
  | {
      readonly kind: 'third-flat' | 'third-sharp';
      readonly cents: Cents;
      readonly third: ThirdKind;
    }
  /** Two lines at the octave, and nobody knows yet which is the note's own: not judged on a guess. */
  | { readonly kind: 'octave-open' }
  | { readonly kind: 'aligned' };

/** What a verdict needs to know; cents of the partials are against the own fundamental. */
export interface Judged {
  readonly note: MidiNote;
  readonly fundamental: { readonly cents: Cents };
  readonly octave: { readonly centsFromOwn: Cents } | null;
  /** The other of two lines at the octave, while it is open which is the note's own. */
  readonly octaveRival?: { readonly centsFromOwn: Cents } | null;
  readonly third: { readonly kind: ThirdKind; readonly centsFromOwn: Cents } | null;
}

/** Fundamental first, then octave, then third; the first one outside its tolerance is the verdict. */
export function verdictOn(judged: Judged, tolerances: Tolerances = goodTolerances): Verdict {
  const { note, fundamental, octave, octaveRival, third } = judged;
  if (isOutside(fundamental.cents, tolerances.main)) {
    return { kind: fundamental.cents < 0 ? 'flat' : 'sharp', cents: fundamental.cents };
  }
  if (note > tolerances.highestWithPartials) return { kind: 'aligned' };
  if (octaveRival) return { kind: 'octave-open' };
  if (octave && isOutside(octave.centsFromOwn, tolerances.main)) {
    const kind = octave.centsFromOwn < 0 ? 'octave-flat' : 'octave-sharp';
    return { kind, cents: octave.centsFromOwn };
  }
  if (third && isOutside(third.centsFromOwn, tolerances.third)) {
    const kind = third.centsFromOwn < 0 ? 'third-flat' : 'third-sharp';
    return { kind, cents: third.centsFromOwn, third: third.kind };
  }
  return { kind: 'aligned' };
}

/** Judged on whole cents, as shown: what reads "5" is not outside a tolerance of 5. */
export const isOutside = (value: Cents, tolerance: Cents): boolean =>
  Math.round(Math.abs(value)) > tolerance;
