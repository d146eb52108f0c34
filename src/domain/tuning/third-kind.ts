// The third partial a tuner gives a note: 3:1 or 4:1 over the fundamental.

export type ThirdKind = 'twelfth' | 'double-octave';
