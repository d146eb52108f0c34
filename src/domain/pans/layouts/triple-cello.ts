// The triple cello: three drums of one diminished seventh each, C3 to B4.
import type { PanLayout } from '../layout';
import { placesOn, sizesByPitch } from '../place-notes';

const sizes = sizesByPitch('C3', 'B4', 0.31);

export const tripleCello: PanLayout = {
  id: 'triple-cello',
  name: 'Triple cello',
  drums: [
    {
      name: 'left',
      notes: [
        ...placesOn('outer', sizes, [
          ['C3', 4.7],
          ['A3', 7.2],
          ['Eb4', 8.9],
          ['Eb3', 11],
          ['F#3', 1.1],
          ['C4', 2.7],
        ]),
        ...placesOn('middle', sizes, [
          ['F#4', 1.7, 0.214],
          ['A4', 6.3, 0.396],
        ]),
      ],
    },
    {
      name: 'middle',
      notes: [
        ...placesOn('outer', sizes, [
          ['D3', 5.7],
          ['B3', 8.3],
          ['F4', 9.9],
          ['F3', 11.8],
          ['Ab3', 1.8],
          ['D4', 3.5],
        ]),
        ...placesOn('middle', sizes, [
          ['Ab4', 2.4, 0.241],
          ['B4', 8, 0.311],
        ]),
      ],
    },
    {
      name: 'right',
      notes: [
        ...placesOn('outer', sizes, [
          ['C#4', 4.6],
          ['C#3', 6.9],
          ['Bb3', 9.4],
          ['E4', 10.7],
          ['E3', 0.5],
          ['G3', 2.6],
        ]),
        ...placesOn('middle', sizes, [
          ['G4', 2.4, 0.288],
          ['Bb4', 9.5, 0.326],
        ]),
      ],
    },
  ],
  source:
    'Notes: several published pages, a diminished seventh a drum. Places: hours measured in one openly ' +
    'published drawing. Sizes and radii are drawn to be legible, not measured.',
  doubts: ['The order of the drums and the sense of rotation differ from band to band.'],
};
