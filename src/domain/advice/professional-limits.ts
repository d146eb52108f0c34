// When a note is for a professional: the user's limits.

import { type Cents, cents } from '../tuning/units';

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

/** What the user may choose as the farthest, cents. */
export const farthestRange = { least: 5, most: 200 };
