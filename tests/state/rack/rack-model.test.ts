import { signal } from '@preact/signals';
import { describe, expect, it, vi } from 'vitest';
import type { RackChange } from '../../../src/domain/ports/pan-store';
import { judgingText } from '../../../src/domain/rack/card-settings';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import type { RackTrace } from '../../../src/domain/rack/rack-trace';
import { type PanId, panId } from '../../../src/domain/records/rack-records';
import { backupAt, type LastBackup } from '../../../src/domain/settings/settings';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, instant } from '../../../src/domain/tuning/units';
import { createRackModel } from '../../../src/state/rack/rack-model';
import {
  sampleCard,
  sampleEdit,
  sampleEnd,
  samplePan,
  sampleReading,
  sampleRound,
} from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

const judging = { a4: hertz(440), reference: 'band', limits: usualTolerances } as const;
const usualJudging = judgingText(judging);

function rackWith(
  before: RackTrace | null,
  memory = memoryPanStore(),
  copy: { kept: readonly PanCard[] } = { kept: [] },
  parts: { areThere: boolean } = { areThere: true },
) {
  const trace = { kept: before };
  const lastBackup = signal<LastBackup | null>(null);
  const tell: ((change: RackChange) => void)[] = [];
  const model = createRackModel({
    store: async () => {
      if (!parts.areThere) throw new Error('no network');
      return memory.store;
    },
    changes: {
      onChange(listener) {
        tell.push(listener);
        return memory.store.onChange(listener);
      },
    },
    trace: {
      read: () => trace.kept,
      write: (next) => {
        trace.kept = next;
      },
    },
    copy: {
      read: () => copy.kept,
      write: (next) => {
        copy.kept = next;
      },
    },
    clock: { now: () => instant(5000) },
    builtAt: instant(0),
    makeCard: async () => sampleCard(),
    judging: signal(judging),
    lastBackup,
  });
  const otherWindow = (pans: readonly PanId[]): void => {
    for (const listener of tell) listener({ pans, own: null });
  };
  return { memory, trace, copy, model, otherWindow, lastBackup };
}

/** A rack that was not empty once, with a store that only counts its readings after `count` was called. */
function slowlyCounted() {
  const { memory, model } = rackWith({ pans: 4, readings: 100, at: instant(1000) });
  const size = memory.store.size;
  let count = () => {};
  const counted = new Promise<void>((done) => {
    count = done;
  });
  memory.store.size = () => counted.then(size);
  return { memory, model, count };
}

const round = sampleRound('round-1');
const settle = () => new Promise((done) => setTimeout(done, 0));

describe('the rack', () => {
  it('leaves a trace of how much is kept, outside the database', async () => {
    const { memory, trace, model } = rackWith(null);
    await model.load();
    expect(trace.kept).toBeNull();
    await memory.store.keep([sampleEdit('edit-1', 'Heron'), round, sampleReading('one', round)]);
    await settle();
    expect(trace.kept).toEqual({ pans: 1, readings: 1, at: 5000, since: 5000 });
    expect(model.lost.value).toBeNull();
  });

  it('says what is gone until it is back, and remembers it meanwhile', async () => {
    const was = { pans: 1, readings: 2, at: instant(1000) };
    const { memory, trace, model } = rackWith(was);
    await model.load();
    expect(model.lost.value).toEqual(was);
    await memory.store.keep([sampleEdit('edit-1', 'Heron'), round, sampleReading('one', round)]);
    await settle();
    expect(model.lost.value).toEqual(was);
    expect(trace.kept).toEqual(was);
    await memory.store.keep([sampleReading('two', round)]);
    await settle();
    expect(model.lost.value).toBeNull();
    expect(trace.kept).toEqual({ pans: 1, readings: 2, at: 5000, since: 5000 });
  });

  it('reminds of a backup for layouts, marks, visits and photos as well', async () => {
    const { memory, model, lastBackup } = rackWith(null);
    lastBackup.value = backupAt(4000, { readings: 0, changes: 0 });
    const edits = Array.from({ length: 10 }, (_, n) => sampleEdit(`edit-${n}`, 'Heron'));
    await memory.store.keep(edits.slice(1));
    await model.load();
    expect(model.reminder.value).toBeNull();
    await memory.store.keep(edits.slice(0, 1));
    await settle();
    expect(model.reminder.value).toEqual({ kind: 'changes', count: 10 });
    lastBackup.value = backupAt(5000, { readings: 0, changes: 10 });
    expect(model.reminder.value).toBeNull();
  });

  it('reminds of a first backup once its oldest trace is a month old, also without a reading', async () => {
    const month = 30 * 86_400_000;
    const since = instant(5000 - month);
    const { memory, model } = rackWith({ pans: 1, readings: 0, at: instant(4000), since });
    await memory.store.keep([sampleEdit('edit-1', 'Heron')]);
    await model.load();
    expect(model.reminder.value).toEqual({ kind: 'days', days: 30, isFirst: true });
  });

  it('shows its pans before their readings are counted', async () => {
    const { model, memory, count } = slowlyCounted();
    memory.cards.set(sampleCard().pan, sampleCard());
    void model.load();
    await settle();
    expect(model.state.value).toEqual({ kind: 'open' });
    expect(model.count.value).toBe(1);
    count();
  });

  it('without a pan first asks whether they were lost', async () => {
    const { model, count } = slowlyCounted();
    void model.load();
    await settle();
    expect(model.state.value).toEqual({ kind: 'loading' });
    count();
    await settle();
    expect(model.state.value).toEqual({ kind: 'open' });
    expect(model.lost.value).toEqual({ pans: 4, readings: 100, at: 1000 });
  });

  it('says nothing more once the user goes on without it', async () => {
    const { trace, model } = rackWith({ pans: 4, readings: 100, at: instant(1000) });
    await model.load();
    model.goOnWithout();
    expect(model.lost.value).toBeNull();
    expect(trace.kept).toEqual({ pans: 0, readings: 0, at: 5000, since: 5000 });
    await model.load();
    expect(model.lost.value).toBeNull();
  });

  it('blames nobody where the rack cannot be read', async () => {
    const was = { pans: 1, readings: 2, at: instant(1000) };
    const { memory, trace, model } = rackWith(was);
    memory.trouble.now = 'newer';
    await model.load();
    expect(model.lost.value).toBeNull();
    expect(trace.kept).toEqual(was);
  });
});

describe('what this window writes', () => {
  it('does not have the rack read again for each reading of a round, but at its end', async () => {
    const { memory, model } = rackWith(null);
    await memory.store.keep([sampleEdit('edit-1', 'Heron'), round]);
    await model.load();
    const cards = vi.spyOn(memory.store, 'cards');
    await memory.store.keep([sampleReading('one', round)]);
    await memory.store.keep([sampleReading('two', round)]);
    await settle();
    expect(cards).not.toHaveBeenCalled();
    await memory.store.keep([sampleReading('three', round), sampleEnd('end-1', round)]);
    await settle();
    expect(cards).toHaveBeenCalledTimes(1);
  });

  it('is read again where another window wrote it, whatever it is', async () => {
    const { memory, model, otherWindow } = rackWith(null);
    await model.load();
    const cards = vi.spyOn(memory.store, 'cards');
    otherWindow([samplePan]);
    await settle();
    expect(cards).toHaveBeenCalledTimes(1);
  });
});

describe('a part of the app that cannot be loaded', () => {
  it('is a trouble like any other, and the next try may succeed', async () => {
    const parts = { areThere: false };
    const { model } = rackWith(null, memoryPanStore(), { kept: [] }, parts);
    await model.load();
    expect(model.state.value).toEqual({ kind: 'trouble', trouble: 'failed' });
    parts.areThere = true;
    await model.load();
    expect(model.state.value).toEqual({ kind: 'open' });
  });
});

const card = (name: string): PanCard => ({ ...sampleCard(), name });
const namesOf = (cards: readonly PanCard[]): readonly string[] => cards.map(({ name }) => name);

describe('the copy of the cards', () => {
  it('is shown until the rack has been read, which alone is believed', async () => {
    const { model, memory, copy } = rackWith(null);
    copy.kept = [card('Heron'), { ...card('Ibis'), pan: panId('pan-2') }];
    memory.cards.set(samplePan, card('Egret'));
    const loading = model.load();
    expect(model.state.value).toEqual({ kind: 'open' });
    expect(model.isChecked.value).toBe(false);
    expect(namesOf(model.onRack.value)).toEqual(['Heron', 'Ibis']);
    await loading;
    expect(model.isChecked.value).toBe(true);
    expect(namesOf(model.onRack.value)).toEqual(['Lead 1']);
    expect(copy.kept).toEqual(model.onRack.value);
  });

  it('gives way without a word where it was right: nothing is drawn again', async () => {
    const { model, memory, copy } = rackWith(null);
    const kept = { ...card('Heron'), judgedBy: usualJudging };
    copy.kept = [kept];
    memory.cards.set(samplePan, { ...kept });
    const loading = model.load();
    const shown = model.onRack.value;
    await loading;
    expect(model.onRack.value).toBe(shown);
  });

  it('is nothing to speak of where the rack cannot be read, and stays', async () => {
    const { model, memory, copy } = rackWith(null);
    copy.kept = [card('Heron')];
    memory.trouble.now = 'newer';
    await model.load();
    expect(model.state.value).toEqual({ kind: 'trouble', trouble: 'newer' });
    expect(model.isChecked.value).toBe(false);
    expect(model.count.value).toBe(0);
    expect(namesOf(copy.kept)).toEqual(['Heron']);
  });

  it('does not hide that the rack was lost', async () => {
    const was = { pans: 1, readings: 100, at: instant(1000) };
    const { model, copy } = rackWith(was);
    copy.kept = [card('Heron')];
    const said: string[] = [];
    model.state.subscribe(({ kind }) => said.push(`${kind} ${model.count.value}`));
    await model.load();
    expect(said).toEqual(['loading 0', 'open 1', 'loading 0', 'open 0']);
    expect(model.lost.value).toEqual(was);
    expect(copy.kept).toEqual([]);
  });

  it('stands in for a card that must be made anew', async () => {
    const { model, memory, copy } = rackWith(null);
    await memory.store.keep([sampleEdit('edit-1', 'Heron')]);
    await settle();
    memory.cards.clear();
    copy.kept = [card('Heron')];
    const { model: next } = rackWith(null, memory, copy);
    const names: (readonly string[])[] = [];
    next.onRack.subscribe((cards) => names.push(namesOf(cards)));
    await next.load();
    expect(names).toEqual([[], ['Heron'], ['Lead 1']]);
    expect(model.count.value).toBe(1);
  });
});
