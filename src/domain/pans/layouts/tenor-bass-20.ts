// The tenor bass whose notes were measured: 20 notes, G2 to D4.
import type { PanLayout } from '../layout';
import { noSource, noteNamed } from '../place-notes';
import { type TenorBassSpot, tenorBassDrum } from './measured-tenor-bass';

const spots: readonly TenorBassSpot[] = [
  { ring: 'outer', clock: 6.2 },
  { ring: 'outer', clock: 10.2 },
  { ring: 'outer', clock: 1.4 },
  { ring: 'outer', clock: 3.6 },
  { ring: 'centre', clock: 1, radius: 0.04 },
];

/** The fields bend with the bowl and fill their corners; as flat ovals they fit at this part of their lengths. */
const drawn = 0.8;

export const tenorBass20: PanLayout = {
  id: 'tenor-bass-20',
  name: 'Tenor bass, 20 notes',
  drums: (['G2', 'Ab2', 'A2', 'Bb2'] as const).map((lowest, k) =>
    tenorBassDrum(String(k + 1), noteNamed(lowest), spots, drawn),
  ),
  source:
    'Notes and lengths: measured by U. Kronman, Steel Pan Tuning, 1992, on a face of 22¾ in; the ovals are drawn ' +
    'at 80 % of those lengths to fit side by side.',
  doubts: ['Only the round note in the middle is published.', noSource],
};
