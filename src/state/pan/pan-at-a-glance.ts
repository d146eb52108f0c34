// How an open pan stands now, as it is judged now: what its page, tonight and the sheet are made of.
import type { CardSettings } from '../../domain/rack/card-settings';
import { type PanNow, panNow } from '../../domain/rounds/pan-now';
import type { OpenPan } from './pan-model';

/** Built on the newest finished round of many notes, with all that was measured since; the notes alone before the first. */
export const panAtAGlance = (
  { records, base, sinceBase, outside }: OpenPan,
  settings: CardSettings,
): PanNow => panNow(base, [...sinceBase, ...outside], records, settings);
