// How an open pan stands now, as it is judged now: what its page, tonight and the sheet are made of.
import type { CardSettings } from '../../domain/rack/card-settings';
import { type PanNow, panNow } from '../../domain/rounds/pan-now';
import type { OpenPan } from './pan-model';

/** Built on the newest finished round, with all that was measured outside of rounds since; the notes alone before the first. */
export const panAtAGlance = (
  { records, rounds, readings, outside }: OpenPan,
  settings: CardSettings,
): PanNow => panNow(rounds[0] ?? null, [...readings, ...outside], records, settings);
