// The six bass from B1 to E3, of one openly published drawing.
import type { PanLayout } from '../layout';
import { type NamedSpot, placesOn, sizesByPitch } from '../place-notes';

const sizes = sizesByPitch('B1', 'E3', 0.53);

const drums: readonly (readonly [name: string, ...spots: readonly NamedSpot[]])[] = [
  ['far left', ['D2', 9.1], ['G2', 4.5], ['D3', 1]],
  ['far right', ['E2', 11.2], ['A2', 6.5], ['E3', 3.1]],
  ['middle left', ['C2', 7.5], ['F2', 2.8], ['C3', 11.5]],
  ['middle right', ['B1', 7.5], ['F#2', 2.9], ['B2', 11.8]],
  ['near left', ['Eb2', 6], ['Bb2', 1.6], ['Eb3', 10.2]],
  ['near right', ['C#2', 6.7], ['Ab2', 2.5], ['C#3', 11.4]],
];

export const sixBassB: PanLayout = {
  id: 'six-bass-b',
  name: 'Six bass, B1 to E3',
  drums: drums.map(([name, ...spots]) => ({ name, notes: placesOn('outer', sizes, spots) })),
  source:
    'Notes and places: hours measured in one openly published drawing, whose top is taken as the far side. ' +
    'Sizes are drawn, not measured.',
  doubts: ['The drawing prints one drum an octave too high; it is corrected here.'],
};
