// What is looked at after a fall, before a note is struck, in this order.

export const lookKinds = [
  'sharp-edges',
  'crack',
  'rim',
  'skirt',
  'hangers',
  'stand',
  'heat',
  'water',
] as const;

export type LookKind = (typeof lookKinds)[number];

export const lookAnswers = ['yes', 'no', 'unsure'] as const;

/** `yes`: it is so, and something must be done about it. `unsure`: somebody looked and cannot tell. */
export type LookAnswer = (typeof lookAnswers)[number];
