// A rack in memory for tests: keeps what it is given, or has the trouble it is told to have.
import type { Kept, PanStore, RackChange, StoreTrouble } from '../../src/domain/ports/pan-store';
import type { PanCard } from '../../src/domain/rack/pan-card';
import type { Attachment, PanId, RackRecord } from '../../src/domain/records/rack-records';
import { isBefore, olderFirst } from '../../src/domain/records/record-order';

export function memoryPanStore() {
  const records: RackRecord[] = [];
  const attachments: Attachment[] = [];
  const cards = new Map<PanId, PanCard>();
  const listeners = new Set<(change: RackChange) => void>();
  const trouble: { now: StoreTrouble | null } = { now: null };
  const loaded = <T>(value: T) =>
    trouble.now === null
      ? ({ kind: 'loaded', value, repairs: [] } as const)
      : ({ kind: 'trouble', trouble: trouble.now } as const);
  const ofKind = <Kind extends RackRecord['kind']>(kind: Kind, pan?: PanId) =>
    records.filter(
      (record): record is Extract<RackRecord, { kind: Kind }> =>
        record.kind === kind && (pan === undefined || record.pan === pan),
    );
  const store: PanStore = {
    async cards() {
      const pans = [...new Set(records.map(({ pan }) => pan))];
      return loaded({
        cards: [...cards.values()],
        stale: pans.filter((pan) => !cards.has(pan)),
      });
    },
    async keepCard(card) {
      cards.set(card.pan, card);
      return { kind: 'kept' };
    },
    pan: async (pan) =>
      loaded({
        pan,
        edits: ofKind('pan-edit', pan),
        rounds: ofKind('round', pan),
        ends: ofKind('round-end', pan),
        marks: ofKind('mark', pan),
        blows: ofKind('blows', pan),
        knockChecks: ofKind('knock-check', pan),
        stopgaps: ofKind('stopgap', pan),
        visits: ofKind('tuner-visit', pan),
        erasures: ofKind('erasure', pan),
      }),
    readingsOfRound: async (round) =>
      loaded(ofKind('reading').filter((reading) => reading.round === round)),
    readingsOfNote: async (pan, note) =>
      loaded(ofKind('reading', pan).filter((reading) => reading.note === note)),
    readingsOutside: async (pan, since) =>
      loaded(
        ofKind('reading', pan)
          .filter((each) => each.round === null && !(since && isBefore(each, since)))
          .sort(olderFirst),
      ),
    async keep(added, files = []): Promise<Kept> {
      if (trouble.now !== null) return { kind: 'trouble', trouble: trouble.now };
      const known = new Set(records.map(({ id }) => id));
      records.push(...added.filter(({ id }) => !known.has(id)));
      attachments.push(...files);
      for (const { pan } of added) cards.delete(pan);
      const pans = [...new Set(added.map(({ pan }) => pan))];
      for (const listener of listeners) listener({ pans, own: added });
      return { kind: 'kept' };
    },
    attachment: async (id) => loaded(attachments.find((each) => each.id === id) ?? null),
    size: async () =>
      loaded({
        readings: ofKind('reading').length,
        changes: records.length,
        soundBytes: attachments
          .filter(({ kind }) => kind === 'sound')
          .reduce((sum, { bytes }) => sum + bytes.length, 0),
      }),
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  return { store, records, attachments, cards, trouble, ofKind };
}
