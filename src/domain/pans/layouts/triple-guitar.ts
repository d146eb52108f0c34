// The triple guitar: notes and places of the triple cello, on shorter drums.
import type { PanLayout } from '../layout';
import { noSource } from '../place-notes';
import { tripleCello } from './triple-cello';

export const tripleGuitar: PanLayout = {
  id: 'triple-guitar',
  name: 'Triple guitar',
  drums: tripleCello.drums,
  source:
    'Range C3 to B4 and 24 notes like the triple cello (R. A. Sharma, Composing and Arranging for the Steel Pan). ' +
    'Places taken from the triple cello.',
  doubts: [noSource, 'Some start at B♭2 or A2. One in a museum has 27 notes, nine a drum.'],
};
