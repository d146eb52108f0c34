// All layouts that come with the app, by family. Seldom used: screens import this file when they need it.

import type { PanLayout } from '../layout';
import type { PanFamily } from '../pan-family';
import { doubleGuitar } from './double-guitar';
import { doubleSecond } from './double-second';
import { highDLead } from './high-d-lead';
import { lowCLead } from './low-c-lead';
import { sixBassB } from './six-bass-b';
import { sixBassBFlat } from './six-bass-b-flat';
import { tenorBass20 } from './tenor-bass-20';
import { tenorBass24 } from './tenor-bass-24';
import { tripleCello } from './triple-cello';
import { tripleGuitar } from './triple-guitar';
import {
  doubleGuitar20,
  doubleTenor,
  emptyLayout,
  fourCello,
  nineBass,
  quadrophonic,
  twelveBass,
} from './unplaced-layouts';

export interface BuiltInLayout {
  readonly family: PanFamily;
  readonly layout: PanLayout;
  /** `unplaced`: only the range of notes is known, the player arranges them. */
  readonly kind: 'placed' | 'unplaced';
  /** Mirror-image pans of this kind are common. */
  readonly isMirroredToo: boolean;
}

const placed = (family: PanFamily, layout: PanLayout, isMirroredToo = false): BuiltInLayout => ({
  family,
  layout,
  kind: 'placed',
  isMirroredToo,
});
const unplaced = (family: PanFamily, layout: PanLayout): BuiltInLayout => ({
  family,
  layout,
  kind: 'unplaced',
  isMirroredToo: false,
});

export const builtInLayouts: readonly BuiltInLayout[] = [
  placed('lead', lowCLead, true),
  placed('lead', highDLead, true),
  unplaced('double-tenor', doubleTenor),
  placed('double-second', doubleSecond, true),
  placed('guitar', doubleGuitar),
  unplaced('guitar', doubleGuitar20),
  placed('guitar', tripleGuitar),
  placed('cello', tripleCello),
  unplaced('cello', fourCello),
  unplaced('quads', quadrophonic),
  placed('tenor-bass', tenorBass20),
  placed('tenor-bass', tenorBass24),
  placed('bass', sixBassBFlat),
  placed('bass', sixBassB),
  unplaced('bass', nineBass),
  unplaced('bass', twelveBass),
  unplaced('other', emptyLayout),
];

export const layoutsOf = (family: PanFamily): readonly BuiltInLayout[] =>
  builtInLayouts.filter((entry) => entry.family === family);
