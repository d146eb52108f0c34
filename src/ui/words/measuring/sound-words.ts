// What is said about kept sounds.
export const soundWords = {
  title: 'How it sounded',
  play: (when: string) => `Play ${when}`,
  lookInside: (when: string) => `Look inside ${when}`,
  unheard: 'No strike can be made out in this sound.',
  missing: 'This sound is not on this phone any more.',
} as const;
