// What is said about kept sounds.
export const soundWords = {
  title: 'How it sounded',
  play: (when: string) => `Play ${when}`,
  missing: 'This sound is not on this phone any more.',
} as const;
