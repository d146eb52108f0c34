// Reads what a pan's card is made of, makes it, and keeps it for the next time.
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import { makePanCard } from '../../domain/rack/make-pan-card';
import type { PanCard } from '../../domain/rack/pan-card';
import type { PanId } from '../../domain/records/rack-records';
import { currentPan } from '../../domain/records/standing/current-pan';
import { baseRound, mostLookedThrough } from '../../domain/rounds/base-round';
import { newestFinishedRounds } from '../../domain/rounds/finished-rounds';
import { readBack } from '../keeping/read-back';

/** The card of a pan as its records are now, or why they cannot be read. */
export async function renewCard(
  store: Pick<PanStore, 'pan' | 'readingsOfRound' | 'readingsOutside' | 'keepCard'>,
  pan: PanId,
  settings: CardSettings,
): Promise<PanCard | StoreTrouble> {
  const records = await store.pan(pan);
  if (records.kind === 'trouble') return records.trouble;
  const rounds = newestFinishedRounds(records.value, mostLookedThrough);
  const { layout } = currentPan(records.value).fields;
  const { erasures } = records.value;
  const inRounds = await readBack(store, { rounds, layout, erasures, full: 2 });
  if (inRounds.kind === 'trouble') return inRounds.trouble;
  const outside = await store.readingsOutside(pan, baseRound(rounds, inRounds.readings, layout));
  if (outside.kind === 'trouble') return outside.trouble;
  const card = makePanCard(records.value, [...inRounds.readings, ...outside.value], settings);
  // Only to open quickly the next time: a card that cannot be kept is made anew then.
  await store.keepCard(card, records.value);
  return card;
}
