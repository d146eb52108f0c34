// The double second: two whole-tone drums, F#3 to C#6.
import type { PanLayout } from '../layout';
import { placesOn, sizesByPitch } from '../place-notes';

const sizes = sizesByPitch('F#3', 'C#6', 0.205);
/** Nine notes along the rim leave two rings: every note has 44 px for a finger on a screen of 320 px. */
const inner = 0.5;
const inmost = 0.2;

export const doubleSecond: PanLayout = {
  id: 'double-second',
  name: 'Double second',
  drums: [
    {
      name: 'left',
      notes: [
        ...placesOn('outer', sizes, [
          ['F#3', 6.7],
          ['F#4', 8.3],
          ['D4', 9.6],
          ['G#3', 11.2],
          ['G#4', 0.6],
          ['C4', 1.8],
          ['E4', 2.8],
          ['Bb3', 3.9],
          ['Bb4', 5.2],
        ]),
        ...placesOn('middle', sizes, [
          ['G#5', 0.7, inner],
          ['C5', 2.4, inner],
          ['E5', 3.5, inner],
          ['Bb5', 5, inner],
        ]),
        ...placesOn('centre', sizes, [
          ['C6', 4.3, inmost],
          ['F#5', 7.4, inmost],
          ['D5', 10.7, inmost],
        ]),
      ],
    },
    {
      name: 'right',
      notes: [
        ...placesOn('outer', sizes, [
          ['F4', 6.8],
          ['A3', 8.2],
          ['A4', 9.3],
          ['C#4', 10.4],
          ['G3', 12],
          ['G4', 1.5],
          ['Eb4', 2.7],
          ['B4', 3.8],
          ['B3', 5.3],
        ]),
        ...placesOn('middle', sizes, [
          ['G5', 0.8, inner],
          ['B5', 4.6, inner],
          ['F5', 7, inner],
          ['A5', 8.9, 0.565],
          ['C#5', 9.9, 0.42],
        ]),
        ...placesOn('centre', sizes, [
          ['Eb5', 3, inmost],
          ['C#6', 7.7, inmost],
        ]),
      ],
    },
  ],
  source:
    'Notes: two whole-tone scales, in several published pages. Places: hours measured in one openly published ' +
    'drawing. Sizes and radii are drawn to be legible and to leave every note room for a finger, not measured.',
  doubts: ['Which drum stands on the left is not the same everywhere.'],
};
