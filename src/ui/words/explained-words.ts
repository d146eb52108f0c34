// Words that not everybody knows, in one line each.

export const explainedWords = {
  walking: {
    word: 'walking',
    means:
      'The note sounds lower, or higher, with every strike. Stop striking it: the metal may be giving way.',
  },
  choked: {
    word: 'choked',
    means:
      'The note stops ringing much sooner than the notes around it. Something touches it, or its metal is hurt.',
  },
  unevenness: {
    word: 'unevenness',
    means: 'How far the notes lie from the pan as a whole, on average. Small is good.',
  },
} as const;

export type ExplainedWord = keyof typeof explainedWords;
export const whatIs = (word: ExplainedWord): string => `What is “${explainedWords[word].word}”?`;

export const pageWords = { parts: 'Parts of this page' } as const;
