// Which turns in the order of a pan's records are taken, as far as this window knows: from all that it has read and made.
import type { Loaded, PanStore } from '../../domain/ports/pan-store';
import type { PanId, PanRecords } from '../../domain/records/rack-records';
import { type InTurn, lastTurn, turnOf } from '../../domain/records/record-order';
import { type Instant, instant } from '../../domain/tuning/units';

interface TurnedRecord extends InTurn {
  readonly pan: PanId;
}

export interface RecordTurns {
  /** The turn of a record that is made now: after all that is known of its pan, whatever the clock says. */
  next(pan: PanId, now: Instant): Instant;
  saw(records: readonly TurnedRecord[]): void;
}

export function createRecordTurns(): RecordTurns {
  const latest = new Map<PanId, number>();
  const take = (pan: PanId, place: number): void => {
    if (place > (latest.get(pan) ?? Number.NEGATIVE_INFINITY)) latest.set(pan, place);
  };
  return {
    next(pan, now) {
      const after = (latest.get(pan) ?? Number.NEGATIVE_INFINITY) + 1;
      const place = Math.min(Math.max(now, after), lastTurn);
      take(pan, place);
      return instant(place);
    },
    saw(records) {
      for (const record of records) take(record.pan, turnOf(record));
    },
  };
}

/** `store`, with `turns` told of every record that is read from it or kept. */
export function turnedStore(store: PanStore, turns: RecordTurns): PanStore {
  const seen = <T>(loaded: Loaded<T>, recordsIn: (value: T) => readonly TurnedRecord[]) => {
    if (loaded.kind === 'loaded') turns.saw(recordsIn(loaded.value));
    return loaded;
  };
  return {
    cards: () => store.cards(),
    keepCard: (card, madeFrom) => store.keepCard(card, madeFrom),
    pan: async (pan) => seen(await store.pan(pan), allOf),
    readingsOfRound: async (round) => seen(await store.readingsOfRound(round), (all) => all),
    readingsOfNote: async (pan, note) => seen(await store.readingsOfNote(pan, note), (all) => all),
    readingsOutside: async (pan, since) =>
      seen(await store.readingsOutside(pan, since), (all) => all),
    keep(records, attachments) {
      turns.saw(records);
      return store.keep(records, attachments);
    },
    attachment: (id) => store.attachment(id),
    size: () => store.size(),
    onChange: (listener) => store.onChange(listener),
  };
}

const allOf = ({ pan: _, ...records }: PanRecords): readonly TurnedRecord[] =>
  Object.values(records).flat();
