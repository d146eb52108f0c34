// What is said about kept sounds.
export const soundWords = {
  title: 'How it sounded',
  play: (when: string) => `Play ${when}`,
  lookInside: (when: string) => `Look inside ${when}`,
  unheard: 'No strike can be made out in this sound.',
  missing: 'This sound is not on this phone any more.',
} as const;

/** The tone to tune to by ear. */
export const targetToneWords = {
  title: 'Target tone',
  why: 'A tap holds the tone, another one ends it. Nothing is measured meanwhile.',
  against: 'At whose pitch',
  pitch: { band: 'The band’s', pan: 'The pan’s' },
  low: 'Use headphones below 200 Hz: the phone’s own loudspeaker can hardly play this low.',
} as const;
