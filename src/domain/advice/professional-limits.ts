// When a note is for a professional: the user's limits.

import { type Cents, cents } from '../tuning/units';

export interface ProfessionalLimits {
  /** A partial farther off than this, cents. */
  readonly farthest: Cents;
  /** Whether a note without an octave counts where most of its neighbours have one. */
  readonly withoutOctave: boolean;
  /** A note whose decay time is below this share of its neighbours'; 0 turns the rule off. */
  readonly shortestDecay: number;
  /** A note that falls further with every strike. */
  readonly falling: boolean;
}

/**
 * The largest distance is what field tuners ask for (common practice, no source); the decay share is our own choice.
 */
export const usualProfessionalLimits: ProfessionalLimits = {
  farthest: cents(50),
  withoutOctave: true,
  shortestDecay: 0.4,
  falling: true,
};

/** What the user may choose as the farthest, cents. */
export const farthestRange = { least: 5, most: 200 };
