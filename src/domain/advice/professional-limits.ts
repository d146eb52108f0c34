// When a note is for a professional: the user's limits, and whether a note is beyond them.

import type { Walk } from '../reading/walking';
import { type Cents, cents, type MidiNote } from '../tuning/units';

export interface ProfessionalLimits {
  /** A partial farther off than this, cents. */
  readonly farthest: Cents;
  /** A note without an octave where most of its neighbours have one. */
  readonly withoutOctave: boolean;
  /** A note that decays in less than this part of its neighbours' time; 0 for never. */
  readonly shortestDecay: number;
  /** A note that falls further with every strike. */
  readonly falling: boolean;
}

/** Farthest as asked for by field tuners (common practice, no source); the decay is our own choice. */
export const usualProfessionalLimits: ProfessionalLimits = {
  farthest: cents(50),
  withoutOctave: true,
  shortestDecay: 0.4,
  falling: true,
};

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
  /** The judged partials that there are, cents. */
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
  const usual = middleOf(neighbours.flatMap(({ decaySeconds }) => decaySeconds ?? []));
  const { decaySeconds } = note;
  if (usual === null || decaySeconds === null) return null;
  if (decaySeconds >= limits.shortestDecay * usual) return null;
  return { kind: 'choked', decaySeconds, usualSeconds: usual };
}

/** The lower middle one; a single neighbour is no measure. */
function middleOf(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  return [...values].sort((low, high) => low - high)[Math.floor((values.length - 1) / 2)] ?? null;
}
