export const references = ['band', 'pan'] as const;

/** What the verdict on a fundamental is judged against: the band's pitch, or the pan as a whole. */
export type Reference = (typeof references)[number];
