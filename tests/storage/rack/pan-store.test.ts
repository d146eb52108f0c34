// What the rack's memory promises, on an IndexedDB made of memory; the browser's own is in tests/browser.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Loaded } from '../../../src/domain/ports/pan-store';
import { panId, roundId, roundOf } from '../../../src/domain/records/rack-records';
import { midiNote } from '../../../src/domain/tuning/units';
import { Database } from '../../../src/storage/database/database';
import type {
  RecordStore,
  RingwrightSchema,
} from '../../../src/storage/database/database-structure';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import * as fc from '../../properties';
import {
  at,
  sampleAttachment,
  sampleBlows,
  sampleCard,
  sampleEdit,
  sampleEnd,
  sampleErasure,
  sampleKnockCheck,
  sampleMark,
  samplePan,
  sampleReading,
  sampleRound,
  sampleStopgap,
  sampleVisit,
} from './rack-sample';

const value = <T>(loaded: Loaded<T>): T => {
  if (loaded.kind === 'trouble') throw new Error(loaded.trouble);
  return loaded.value;
};
const round = sampleRound('round-1');
let store: IndexedDbPanStore;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  store = new IndexedDbPanStore(new Database());
});

describe('records that were kept', () => {
  it('come back sorted by kind, as they went in', async () => {
    const edit = sampleEdit('edit-1', 'Lead 1');
    const end = sampleEnd('end-1', round);
    const mark = sampleMark('mark-1');
    const blows = sampleBlows('blows-1');
    const check = sampleKnockCheck('check-1');
    const stopgap = sampleStopgap('stopgap-1');
    const visit = sampleVisit('visit-1');
    const erasure = sampleErasure('erasure-1', 'mark-1');
    const all = [edit, round, end, mark, blows, check, stopgap, visit, erasure];
    expect(await store.keep(all)).toEqual({ kind: 'kept' });
    expect(await store.pan(samplePan)).toEqual({
      kind: 'loaded',
      value: {
        pan: samplePan,
        edits: [edit],
        rounds: [round],
        ends: [end],
        marks: [mark],
        blows: [blows],
        knockChecks: [check],
        stopgaps: [stopgap],
        visits: [visit],
        erasures: [erasure],
      },
      repairs: [],
    });
  });

  it('belong to their pan only', async () => {
    const other = panId('pan-2');
    await store.keep([sampleEdit('edit-1', 'Lead 1'), sampleEdit('edit-2', 'Lead 2', other)]);
    expect(value(await store.pan(other)).edits.map(({ id }) => id)).toEqual(['edit-2']);
    expect(value(await store.pan(panId('pan-3'))).edits).toEqual([]);
  });

  it('are readings by round and by note, oldest first', async () => {
    const early = sampleReading('reading-b', round, 72, 100);
    const late = sampleReading('reading-a', round, 72, 200);
    const otherNote = sampleReading('reading-c', round, 60, 150);
    const noRound = sampleReading('reading-d', null, 72, 50);
    await store.keep([late, early, otherNote, noRound]);
    const ofRound = value(await store.readingsOfRound(roundOf(round)));
    expect(ofRound).toEqual([early, otherNote, late]);
    const ofNote = value(await store.readingsOfNote(samplePan, midiNote(72)));
    expect(ofNote).toEqual([noRound, early, late]);
    expect(value(await store.readingsOfRound(roundId('none')))).toEqual([]);
  });

  it('are readings outside of rounds since a moment, oldest first, of one pan only', async () => {
    const [older, first, second] = [
      sampleReading('reading-c', null, 72, 99),
      sampleReading('reading-b', null, 60, 100),
      sampleReading('reading-a', null, 72, 200),
    ];
    const inRound = sampleReading('reading-d', round, 72, 150);
    const ofOther = sampleReading('reading-e', null, 72, 150, panId('pan-2'));
    await store.keep([second, first, older, inRound, ofOther]);
    expect(value(await store.readingsOutside(samplePan, { at: at(100) }))).toEqual([first, second]);
    expect(value(await store.readingsOutside(samplePan, { at: at(201) }))).toEqual([]);
    expect(value(await store.readingsOutside(samplePan, null))).toEqual([older, first, second]);
    // The clock was put back, and the turn is right.
    const turned = { ...sampleReading('reading-f', null, 72, 10), turn: at(300) };
    await store.keep([turned]);
    expect(value(await store.readingsOutside(samplePan, { at: at(201) }))).toEqual([turned]);
  });

  it('stay as they are when one of the same name is kept again', async () => {
    await store.keep([sampleEdit('edit-1', 'first')]);
    const twice = [sampleEdit('edit-1', 'again'), sampleEdit('edit-2', 'a')];
    expect(await store.keep([...twice, sampleEdit('edit-2', 'b')])).toEqual({ kind: 'kept' });
    const names = value(await store.pan(samplePan)).edits.map(({ fields }) => fields.name);
    expect(names).toEqual(['first', 'a']);
  });

  it('are all there or none of them', async () => {
    const broken = { ...sampleReading('reading-1', round), strikes: [() => 0] };
    const answer = await store.keep([sampleEdit('edit-1', 'Lead 1'), broken as never]);
    expect(answer).toEqual({ kind: 'trouble', trouble: 'failed' });
    expect(value(await store.pan(samplePan)).edits).toEqual([]);
    expect(value(await store.cards())).toEqual({ cards: [], stale: [] });
  });

  it('keep their sound and photo beside them', async () => {
    const sound = sampleAttachment('sound-1', 'sound', 1000);
    const photo = sampleAttachment('photo-1', 'photo', 5000);
    await store.keep([sampleReading('reading-1', round)], [sound, photo]);
    expect(value(await store.attachment(sound.id))).toEqual(sound);
    expect(value(await store.attachment(photo.id))).toEqual(photo);
    expect(value(await store.attachment(sampleAttachment('none', 'photo', 0).id))).toBeNull();
  });

  it('are counted, and the bytes of their sounds summed', async () => {
    expect(value(await store.size())).toEqual({ readings: 0, soundBytes: 0, changes: 0 });
    const sounds = [1000, 300].map((bytes, n) => sampleAttachment(`sound-${n}`, 'sound', bytes));
    await store.keep(
      [sampleReading('reading-1', round), sampleReading('reading-2', round)],
      [...sounds, sampleAttachment('photo-1', 'photo', 5000)],
    );
    expect(value(await store.size())).toEqual({ readings: 2, soundBytes: 1300, changes: 1 });
    const more = [2, 3].map((n) => sampleAttachment(`sound-${n}`, 'sound', 1000));
    await store.keep([], more);
    expect(value(await store.size()).soundBytes).toBe(3300);
  });

  it('are counted right before and after a card was made, and after more of them were kept', async () => {
    const elsewhere = { ...sampleReading('reading-0', null), pan: panId('pan-2') };
    await store.keep([elsewhere, sampleReading('reading-1', round)]);
    expect(value(await store.size()).readings).toBe(2);
    await store.keepCard(sampleCard(), value(await store.pan(samplePan)));
    expect(value(await store.size()).readings).toBe(2);
    await store.keep([sampleReading('reading-2', round, 60), sampleReading('reading-1', round)]);
    expect(value(await store.size()).readings).toBe(3);
    await store.keepCard(sampleCard(), value(await store.pan(samplePan)));
    await new IndexedDbPanStore(new Database()).keep([sampleReading('reading-3', round, 127)]);
    expect(value(await store.size()).readings).toBe(4);
  });
});

describe('the card of a pan', () => {
  beforeEach(async () => {
    await store.keep([sampleEdit('edit-1', 'Lead 1')]);
  });

  it('is missing as long as nobody made one', async () => {
    expect(value(await store.cards())).toEqual({ cards: [], stale: [samplePan] });
  });

  it('is there once it was kept', async () => {
    await store.keepCard(sampleCard(), value(await store.pan(samplePan)));
    expect(value(await store.cards())).toEqual({ cards: [sampleCard()], stale: [] });
  });

  it('is thrown away with the next record of its pan, and not with one that was there before', async () => {
    await store.keepCard(sampleCard(), value(await store.pan(samplePan)));
    await store.keep([sampleEdit('edit-1', 'Lead 1'), sampleEdit('edit-2', 'x', panId('pan-2'))]);
    expect(value(await store.cards())).toEqual({ cards: [sampleCard()], stale: ['pan-2'] });
    await store.keep([sampleMark('mark-1')]);
    expect(value(await store.cards()).stale).toEqual([samplePan, 'pan-2']);
  });

  it('made from older records than those of another window is not kept', async () => {
    const records = value(await store.pan(samplePan));
    await new IndexedDbPanStore(new Database()).keep([sampleMark('mark-1')]);
    expect(await store.keepCard(sampleCard(), records)).toEqual({ kind: 'kept' });
    expect(value(await store.cards()).stale).toEqual([samplePan]);
  });

  it('of an unknown pan is not kept', async () => {
    const nobody = panId('nobody');
    await store.keepCard(sampleCard(nobody), value(await store.pan(nobody)));
    expect(value(await store.cards())).toEqual({ cards: [], stale: [samplePan] });
  });
});

describe('a change', () => {
  it('is told to this window with what was written, and to the others with the pans it touched', async () => {
    const other = new IndexedDbPanStore(new Database());
    const here = vi.fn();
    const there = vi.fn();
    store.onChange(here);
    other.onChange(there);
    const own = [sampleEdit('edit-1', 'Lead 1'), sampleMark('mark-1')];
    await store.keep(own);
    await vi.waitFor(() => expect(there).toHaveBeenCalledWith({ pans: [samplePan], own: null }));
    expect(here).toHaveBeenCalledTimes(1);
    expect(here).toHaveBeenCalledWith({ pans: [samplePan], own });
  });

  it('is not told when nothing was new', async () => {
    await store.keep([sampleEdit('edit-1', 'Lead 1')]);
    const heard = vi.fn();
    const stop = store.onChange(heard);
    await store.keep([sampleEdit('edit-1', 'Lead 1')]);
    await store.keep([]);
    expect(heard).not.toHaveBeenCalled();
    stop();
    await store.keep([sampleEdit('edit-2', 'Lead 1')]);
    expect(heard).not.toHaveBeenCalled();
  });
});

describe('records that something else has written into the database', () => {
  /** Puts anything into a store, past everything that guards it. */
  async function plant(name: RecordStore | 'attachments' | 'cards', ...values: readonly unknown[]) {
    await store.cards();
    const database = await openDB<RingwrightSchema>('ringwright');
    for (const each of values) await database.put(name, each);
    database.close();
  }
  const good = sampleReading('reading-1', round);

  it('are left out one by one and named, and all others are read', async () => {
    await plant(
      'readings',
      good,
      { id: 'x', pan: samplePan, note: 72, round: roundOf(round) },
      { ...good, id: 'y', strikes: 'none' },
      { ...good, id: 'newer', shape: 2 },
      { ...sampleMark('wrong-store'), round: roundOf(round) },
    );
    const found = await store.readingsOfRound(roundOf(round));
    expect(found).toMatchObject({ kind: 'loaded', value: [good] });
    const repairs = found.kind === 'loaded' ? found.repairs : [];
    for (const name of ['x', 'y', 'newer', 'wrong-store']) {
      expect(repairs.some((repair) => repair.startsWith(`${name}: `))).toBe(true);
    }
    expect(await store.readingsOfNote(samplePan, midiNote(72))).toMatchObject({ value: [good] });
  });

  it('lose only the part that is bad', async () => {
    const edit = sampleEdit('edit-1', 'Lead 1');
    await plant('pan-edits', { ...edit, fields: { ...edit.fields, family: 'violin' } });
    const pan = await store.pan(samplePan);
    expect(pan).toMatchObject({ value: { edits: [{ id: 'edit-1', fields: { name: 'Lead 1' } }] } });
    expect(pan.kind === 'loaded' && pan.repairs.length).toBeGreaterThan(0);
  });

  it('are no attachment unless they can be one', async () => {
    const sound = sampleAttachment('sound-1', 'sound', 10);
    const { id, pan } = sound;
    await plant('attachments', { id, pan, attachment: { ...sound, bytes: 'no bytes' } });
    const found = await store.attachment(id);
    expect(found).toMatchObject({ kind: 'loaded', value: null });
    expect(found.kind === 'loaded' && found.repairs).toHaveLength(1);
  });

  it('leave a pan without its card, which is then made anew', async () => {
    await plant(
      'cards',
      { pan: 'pan-1', changes: 1, card: { ...sampleCard(), need: 'much' } },
      { pan: 'pan-2', changes: 'many', card: sampleCard() },
      { pan: 'pan-3', changes: 1, card: { ...sampleCard(panId('pan-3')), version: 2 } },
    );
    expect(value(await store.cards())).toEqual({ cards: [], stale: ['pan-1', 'pan-2', 'pan-3'] });
  });

  it.each([undefined, 'many', -1, 0.5])(
    'do not say how many readings a pan has: with a count of %s they are counted, and the card is made anew',
    async (readings) => {
      await store.keep([sampleReading('reading-1', round), sampleReading('reading-2', round)]);
      await plant('cards', { pan: samplePan, changes: 1, readings, card: sampleCard() });
      expect(value(await store.size()).readings).toBe(2);
      expect(value(await store.cards())).toEqual({ cards: [], stale: [samplePan] });
      await store.keepCard(sampleCard(), value(await store.pan(samplePan)));
      expect(value(await store.cards())).toEqual({ cards: [sampleCard()], stale: [] });
      expect(value(await store.size()).readings).toBe(2);
    },
  );

  it('never make anything throw', async () => {
    await fc.assert(
      fc.asyncProperty(fc.anything(), fc.anything(), async (one, other) => {
        globalThis.indexedDB = new IDBFactory();
        store = new IndexedDbPanStore(new Database());
        try {
          await plant('readings', { id: 'r', pan: samplePan, note: 72, round: 'q', strikes: one });
          await plant('marks', { id: 'm', pan: samplePan, mark: one, at: other });
          await plant('cards', { pan: samplePan, card: one, changes: other });
        } catch (error) {
          // Not everything that fast-check thinks of can be stored at all.
          if (error instanceof Error && error.name !== 'DataCloneError') throw error;
        }
        expect(await store.readingsOfRound(roundId('q'))).toMatchObject({ value: [] });
        expect(await store.pan(samplePan)).toMatchObject({ kind: 'loaded' });
        expect(await store.cards()).toMatchObject({ kind: 'loaded' });
      }),
      { numRuns: 100 },
    );
  });
});
