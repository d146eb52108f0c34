// Reads what a pan's card is made of, makes it, and keeps it for the next time.
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import { makePanCard } from '../../domain/rack/make-pan-card';
import type { PanCard } from '../../domain/rack/pan-card';
import { type PanId, roundOf } from '../../domain/records/rack-records';
import { newestFinishedRounds } from '../../domain/rounds/finished-rounds';

/** The card of a pan as its records are now, or why they cannot be read. */
export async function renewCard(
  store: Pick<PanStore, 'pan' | 'readingsOfRound' | 'readingsOutside' | 'keepCard'>,
  pan: PanId,
  settings: CardSettings,
): Promise<PanCard | StoreTrouble> {
  const records = await store.pan(pan);
  if (records.kind === 'trouble') return records.trouble;
  const rounds = newestFinishedRounds(records.value);
  const loaded = await Promise.all([
    ...rounds.map((start) => store.readingsOfRound(roundOf(start))),
    store.readingsOutside(pan, rounds[0] ?? null),
  ]);
  const readings = [];
  for (const each of loaded) {
    if (each.kind === 'trouble') return each.trouble;
    readings.push(...each.value);
  }
  const card = makePanCard(records.value, readings, settings);
  // Only to open quickly the next time: a card that cannot be kept is made anew then.
  await store.keepCard(card, records.value);
  return card;
}
