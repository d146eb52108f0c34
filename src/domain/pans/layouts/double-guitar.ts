// The double guitar of one openly published drawing, 18 notes, D3 to G4.
import type { PanLayout } from '../layout';
import { placesOn, sizesByPitch } from '../place-notes';

const sizes = sizesByPitch('D3', 'G4', 0.27);

export const doubleGuitar: PanLayout = {
  id: 'double-guitar',
  name: 'Double guitar, 18 notes',
  drums: [
    {
      name: 'left',
      notes: [
        ...placesOn('outer', sizes, [
          ['D3', 4.5],
          ['A3', 6.6],
          ['C#4', 8.4],
          ['F3', 10.6],
          ['B3', 0.3],
          ['D4', 1.5],
          ['Ab3', 2.8],
        ]),
        ...placesOn('middle', sizes, [['G4', 2.1, 0.43]]),
        ...placesOn('centre', sizes, [['F4', 6, 0.2]]),
      ],
    },
    {
      name: 'right',
      notes: [
        ...placesOn('outer', sizes, [
          ['F#3', 5],
          ['Eb3', 7.2],
          ['G3', 9.1],
          ['C4', 10.5],
          ['E3', 0.4],
          ['Bb3', 2],
          ['Eb4', 3.4],
        ]),
        ...placesOn('middle', sizes, [
          ['F#4', 2.3, 0.353],
          ['E4', 9, 0.32],
        ]),
      ],
    },
  ],
  source:
    'Places: hours measured in one openly published drawing of an 18-note double guitar, D3 to G4. ' +
    'Sizes and radii are drawn to be legible, not measured.',
  doubts: [
    'The drawing prints A♭4 on the left drum. A♭3 is drawn here, because A♭3 is missing without it.',
    'Double guitars differ: others have 20 notes or stand the other way round.',
  ],
};
