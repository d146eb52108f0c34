// Whether a note is for a professional by its sound, and why.

import { lowerMedian } from '../numbers/averages';
import type { Walk } from '../reading/walking';
import { type Cents, cents, type MidiNote } from '../tuning/units';
import type { ProfessionalLimits } from './professional-limits';

export type ProfessionalReason =
  /** A note of this drum is marked as cracked, this one or another. */
  | { readonly kind: 'cracked'; readonly note: MidiNote }
  | { readonly kind: 'far-off'; readonly cents: Cents }
  | { readonly kind: 'no-octave' }
  | { readonly kind: 'choked'; readonly decaySeconds: number; readonly usualSeconds: number }
  | { readonly kind: 'falling'; readonly centsPerStrike: Cents };

/** What is known of a note that is measured, beside its tuning. */
export interface NoteSound {
  readonly hasOctave: boolean;
  /** Time constant of the fundamental, or null if unknown. */
  readonly decaySeconds: number | null;
}

export interface SoundingNote extends NoteSound {
  /** Those partials that were judged, cents. */
  readonly off: readonly number[];
  /** Top notes need no octave. */
  readonly needsOctave: boolean;
  readonly walking: Pick<Walk, 'centsPerStrike'> | null;
}

/** Why a note is for a professional by its sound, or null. `neighbours`: those that were measured. */
export function beyondLimits(
  note: SoundingNote,
  neighbours: readonly NoteSound[],
  limits: ProfessionalLimits,
): ProfessionalReason | null {
  const { walking, off } = note;
  if (limits.falling && walking && walking.centsPerStrike < 0) {
    return { kind: 'falling', centsPerStrike: walking.centsPerStrike };
  }
  const farthest = off.reduce((far, each) => (Math.abs(each) > Math.abs(far) ? each : far), 0);
  if (Math.abs(farthest) > limits.farthest) return { kind: 'far-off', cents: cents(farthest) };
  const withOctave = neighbours.filter(({ hasOctave }) => hasOctave).length;
  const isExpected = note.needsOctave && withOctave > neighbours.length / 2;
  if (limits.withoutOctave && !note.hasOctave && isExpected) return { kind: 'no-octave' };
  const decays = neighbours.flatMap((neighbour) => neighbour.decaySeconds ?? []);
  const usual = lowerMedian(decays);
  const { decaySeconds } = note;
  // A single neighbour is not enough to compare with.
  if (decays.length < 2 || usual === null || decaySeconds === null) return null;
  if (decaySeconds >= limits.shortestDecay * usual) return null;
  return { kind: 'choked', decaySeconds, usualSeconds: usual };
}
