// Where blows fall on the oval of a note, in a drawing of 100 by 70.

import type { BlowPlace } from '../../../domain/records/blow-places';

const middle: readonly Point[] = [[50, 35]];
type Point = readonly [x: number, y: number];

export const placeSpots: Readonly<Record<BlowPlace, readonly Point[]>> = {
  middle,
  'long-ends': [
    [14, 35],
    [86, 35],
  ],
  'short-ends': [
    [50, 12],
    [50, 58],
  ],
  corners: [
    [26, 19],
    [74, 19],
    [26, 51],
    [74, 51],
  ],
  border: [],
  'glancing-long': [],
  'glancing-short': [],
};

/** Arrows that point both ways: which way the partial goes is not known. */
export const placeArrows: Partial<Record<BlowPlace, string>> = {
  'glancing-long': 'M14 35H86M22 29L14 35L22 41M78 29L86 35L78 41',
  'glancing-short': 'M50 12V58M44 20L50 12L56 20M44 50L50 58L56 50',
};
