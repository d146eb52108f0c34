// From where on a strike's figures are signs of damage: one table, with the reason of each limit.

/** "Common practice, no source" unless a range of seeded scenes is named. */
export const damageLimits = {
  /** So large a part of a note's strikes must show a sign: one bad strike is none. */
  leastShare: 0.6,
  /** So large a part of the comparison notes must have a partial for its lack to be a sign. */
  leastShareOfNeighbours: 0.6,
  /** Notes further apart are no measure for each other's ring, semitones. */
  comparisonReach: 7,
  /** Fewer comparison notes than this say nothing about what is usual on this pan. */
  fewestNeighbours: 2,
  /** A choked note's ring against what its neighbours' let expect. */
  chokedAgainstNeighbours: 0.5,
  /** … and against its own in the last record: the same note, but perhaps another phone and room. */
  chokedAgainstBefore: 0.55,
  /** Blows on a note that were heard as knocks only, before its silence is a sign. */
  fewestKnocks: 3,
  /** An octave this far below its fundamental is as good as none (a ring partner may sound there), dB. */
  faintestOctaveDb: -30,
  /** … or this far below where the last record had it, dB. */
  octaveFallDb: -20,
  /** A third partial was clearly there if it was at least this strong against its fundamental, dB. */
  clearThirdDb: -24,
  /** Noise tied to the strike: against the note itself, and over what the comparison notes have, dB. */
  buzzDb: -20,
  buzzOverNeighboursDb: 6,
  /** A second line this near to the partner's own fundamental is the partner ringing along, cents. */
  partnerReach: 3,
} as const;
