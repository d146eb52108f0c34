// From which values on a strike's figures are signs of damage: one table, with the reason for each limit.

/**
 * "Common practice, no source" where nothing else is said. "Scenes" are the seeded pans 1 to 100 of the benchmark of
 * the ear, on which the limit was set between the sound notes and the damaged ones; it is tested on others.
 */
export const damageLimits = {
  /** Share of a note's strikes that must show a sign: one bad strike is not enough. */
  leastShare: 0.6,
  /** Share of the comparison notes that must have an octave before its absence is a sign … */
  leastShareOfNeighbours: 0.6,
  /** … and the same for a third partial, which some notes are not tuned to have. */
  leastShareWithThird: 0.4,
  /** Notes further apart are no measure for each other's ring, semitones. */
  comparisonReach: 9,
  /** Fewer comparison notes than this tell nothing about what is usual on this pan. */
  fewestNeighbours: 2,
  /**
   * A choked note's ring, compared with what its neighbours lead one to expect and with its own before; the larger
   * counts. Scenes: sound notes from 0.61 on, choked ones up to 0.49.
   */
  chokedPart: 0.55,
  /** How many blows on a note must be heard as mere knocks before its silence is a sign. */
  fewestKnocks: 3,
  /** How many single blows must be heard as several before a rattle is likelier than a quick hand. */
  fewestHeardAsSeveral: 3,
  /**
   * An octave this far below its fundamental is as good as none; a trace of it or a ring partner may be left, dB.
   * Scenes: sound notes from −15 on, lost octaves up to −27.
   */
  faintestOctaveDb: -21,
  /** … or this far below where the last record had it, dB. */
  octaveFallDb: -20,
  /** A third partial was clearly there if it was at least this strong against its fundamental, dB; fainter ones come and go (scenes). */
  clearThirdDb: -24,
  /** A line this near to the third partial's place may be one too faint to measure, cents. */
  thirdReach: 50,
  /**
   * Noise tied to the strike against the note itself, mean of the strikes, dB. Scenes: sound notes up to −29, buzzes
   * from −27 on.
   */
  buzzDb: -28.5,
  /** … and over the middle of the comparison notes, dB: a room in which all notes are noisy is no buzz. */
  buzzOverNeighboursDb: 5,
  /** Less buzz than this is none, and makes no note's buzz look large, dB. */
  noBuzzDb: -45,
  /** A second line this near to the partner's own fundamental is the partner ringing along, cents. */
  partnerReach: 3,
} as const;
