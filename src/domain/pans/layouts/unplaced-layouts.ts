// Pans of which only the range of notes is known: the notes are dealt to the drums, the player arranges them.
import type { PanLayout } from '../layout';
import { noSource, semitones } from '../place-notes';
import { spreadOnDrums } from '../spread-on-drums';

/** Said of places of our own: along the rim of each drum stand, clockwise from the player, steps of that kind. */
const toArrange = (steps: string): string =>
  `No published positions. This is a start of ours: ${steps} along the rim, the larger notes outside. Drag each note to its place on your pan.`;
const sharma = 'R. A. Sharma, Composing and Arranging for the Steel Pan';

const leftAndRight = (drum: number): string => (drum === 0 ? 'left' : 'right');

export const doubleTenor: PanLayout = {
  id: 'double-tenor',
  name: 'Double tenor',
  drums: spreadOnDrums(semitones('F3', 'B5'), 2, leftAndRight),
  source: `Range F3 to B5: ${sharma}.`,
  doubts: [toArrange('whole tones'), noSource, 'Some reach C6.'],
};

export const doubleGuitar20: PanLayout = {
  id: 'double-guitar-20',
  name: 'Double guitar, 20 notes',
  drums: spreadOnDrums(semitones('C#3', 'Ab4'), 2, leftAndRight),
  source: 'Range C♯3 to A♭4: found in one published page. Two whole-tone drums: derived.',
  doubts: [toArrange('whole tones')],
};

export const fourCello: PanLayout = {
  id: 'four-cello',
  name: 'Four cello',
  drums: spreadOnDrums(semitones('Bb2', 'C#5'), 4),
  source: 'Number of notes (28): a Trinidad information page. Augmented triads: forum and blog.',
  doubts: [toArrange('major thirds'), noSource],
};

export const quadrophonic: PanLayout = {
  id: 'quadrophonic',
  name: 'Quads',
  drums: spreadOnDrums(semitones('B2', 'Bb5'), 4),
  source: 'Four drums of augmented triads, 9 or 10 notes a drum: forum and blog.',
  doubts: [toArrange('major thirds'), noSource, 'One page gives 40 notes, not 36.'],
};

export const nineBass: PanLayout = {
  id: 'nine-bass',
  name: 'Nine bass',
  drums: spreadOnDrums(semitones('E1', 'F#3'), 9),
  source: `Range E1 to F♯3: ${sharma}. Three notes a drum: a Trinidad information page.`,
  doubts: [toArrange('three notes a drum'), noSource],
};

export const twelveBass: PanLayout = {
  id: 'twelve-bass',
  name: 'Twelve bass',
  drums: spreadOnDrums(semitones('B0', 'Bb3'), 12),
  source: `Lowest note about B0: ${sharma}. Three notes a drum: a Trinidad information page.`,
  doubts: [
    toArrange('three notes a drum'),
    'The top note is not published: 36 notes in a row end at B♭3. Check it.',
  ],
};

export const emptyLayout: PanLayout = {
  id: 'own',
  name: 'Another pan',
  drums: [{ name: '1', notes: [] }],
  source: 'Nothing is drawn yet.',
  doubts: ['Add drums and notes as they are on your pan.'],
};
