// The tenor bass of 24 notes, F2 to E4.
import type { PanLayout } from '../layout';
import { noSource, noteNamed } from '../place-notes';
import { type TenorBassSpot, tenorBassDrum } from './measured-tenor-bass';

const spots: readonly TenorBassSpot[] = [
  { ring: 'outer', clock: 7 },
  { ring: 'outer', clock: 9.95 },
  { ring: 'outer', clock: 2.25 },
  { ring: 'outer', clock: 4.5 },
  { ring: 'outer', clock: 12.2 },
  { ring: 'centre', clock: 5.4, radius: 0.055 },
];

/** As in the set of 20 notes, and smaller, because six lie on a drum. */
const drawn = 0.72;

export const tenorBass24: PanLayout = {
  id: 'tenor-bass-24',
  name: 'Tenor bass, 24 notes',
  drums: (['G2', 'Ab2', 'F2', 'F#2'] as const).map((lowest, k) =>
    tenorBassDrum(String(k + 1), noteNamed(lowest), spots, drawn),
  ),
  source:
    'Derived: the 20 notes measured by U. Kronman, Steel Pan Tuning, 1992, with F2, F♯2, E♭4 and E4 added to the ' +
    'drums of their augmented triads (range: R. A. Sharma, Composing and Arranging for the Steel Pan). Ovals at ' +
    '72 % of the measured lengths.',
  doubts: [noSource, 'Tenor basses with whole-tone drums exist too.'],
};
