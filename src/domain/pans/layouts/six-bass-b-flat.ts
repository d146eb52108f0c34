// The six bass from Bb1 to Eb3.
import type { PanLayout } from '../layout';
import { noSource, placesOn, sizesByPitch } from '../place-notes';

const sizes = sizesByPitch('Bb1', 'Eb3', 0.53);

const triples = [
  ['far left', 'C2', 'G2', 'C3'],
  ['far right', 'D2', 'A2', 'D3'],
  ['middle left', 'Bb1', 'F2', 'Bb2'],
  ['middle right', 'B1', 'E2', 'B2'],
  ['near left', 'Eb2', 'Ab2', 'Eb3'],
  ['near right', 'C#2', 'F#2', 'C#3'],
] as const;

export const sixBassBFlat: PanLayout = {
  id: 'six-bass-b-flat',
  name: 'Six bass, B♭1 to E♭3',
  // C-G, D-A, E-B, F#-C#, Ab-Eb, Bb-F: the circle in which the drums stand.
  drums: triples.map(([name, low, middle, high]) => ({
    name,
    notes: placesOn('outer', sizes, [
      [low, 7],
      [middle, 2.8],
      [high, 11.3],
    ]),
  })),
  source:
    'Notes: derived from the range B♭1 to E♭3 (R. A. Sharma, Composing and Arranging for the Steel Pan) and the ' +
    'rule of two notes a fourth or fifth apart on a drum; a player’s forum names the same pairs and their circle.',
  doubts: [noSource],
};
