// The one thing to say about a note: the most important fault, or that there is none.
import type { ThirdKind } from './third-kind';
import { goodTolerances, type Tolerances } from './tolerances';
import { type Cents, cents, type MidiNote } from './units';

export type Verdict =
  | { readonly kind: 'flat' | 'sharp'; readonly cents: Cents }
  | { readonly kind: 'octave-flat' | 'octave-sharp'; readonly cents: Cents }
  | {
      readonly kind: 'third-flat' | 'third-sharp';
      readonly cents: Cents;
      readonly third: ThirdKind;
    }
  /** Two lines at the octave, and it is not known yet which is the note's own: a guess is not judged. */
  | { readonly kind: 'octave-open' }
  /** The fundamental is inferred, and nothing is off by more than its error. */
  | { readonly kind: 'inferred' }
  /** Judged by its fundamental only, and that is in tune: nothing is said about the partials. */
  | { readonly kind: 'in-tune' }
  | { readonly kind: 'aligned' };

/** What a verdict needs to know; cents of the partials are against the own fundamental. */
export interface Judged {
  readonly note: MidiNote;
  readonly fundamental: { readonly cents: Cents } & StatedError;
  /**
   * The fundamental was not heard but follows from its partials: nothing is judged more finely than its stated error.
   */
  readonly isInferred?: boolean;
  readonly octave: ({ readonly centsFromOwn: Cents } & StatedError) | null;
  /** The other of two lines at the octave, while it is open which is the note's own. */
  readonly octaveRival?: { readonly centsFromOwn: Cents } | null;
  readonly third: ({ readonly kind: ThirdKind; readonly centsFromOwn: Cents } & StatedError) | null;
}

interface StatedError {
  /** One standard error. */
  readonly sigmaCents?: Cents;
}

/** An inferred note counts as off when a value is off by more than this many standard errors (chosen, no source). */
const errorsToJudge = 2;

/** The tolerance for a value; where the fundamental is inferred, never narrower than its error allows. */
export const allowedFor = (
  { isInferred = false }: Pick<Judged, 'isInferred'>,
  { sigmaCents = cents(0) }: StatedError,
  tolerance: Cents,
): Cents => (isInferred ? cents(Math.max(tolerance, errorsToJudge * sigmaCents)) : tolerance);

/** Fundamental first, then octave, then third; the first one outside its tolerance is the verdict. */
export function verdictOn(judged: Judged, tolerances: Tolerances = goodTolerances): Verdict {
  const { note, fundamental, octave, octaveRival, third } = judged;
  const nothingOff: Verdict = { kind: judged.isInferred ? 'inferred' : 'aligned' };
  if (isOutside(fundamental.cents, allowedFor(judged, fundamental, tolerances.main))) {
    return { kind: fundamental.cents < 0 ? 'flat' : 'sharp', cents: fundamental.cents };
  }
  if (note > tolerances.highestWithPartials) {
    return judged.isInferred ? nothingOff : { kind: 'in-tune' };
  }
  if (octaveRival) return { kind: 'octave-open' };
  if (octave && isOutside(octave.centsFromOwn, allowedFor(judged, octave, tolerances.main))) {
    const kind = octave.centsFromOwn < 0 ? 'octave-flat' : 'octave-sharp';
    return { kind, cents: octave.centsFromOwn };
  }
  if (third && isOutside(third.centsFromOwn, allowedFor(judged, third, tolerances.third))) {
    const kind = third.centsFromOwn < 0 ? 'third-flat' : 'third-sharp';
    return { kind, cents: third.centsFromOwn, third: third.kind };
  }
  return nothingOff;
}

/** Judged on whole cents, as shown: what reads "5" is not outside a tolerance of 5. */
export const isOutside = (value: Cents, tolerance: Cents): boolean =>
  Math.round(Math.abs(value)) > tolerance;
