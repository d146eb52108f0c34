import { describe, expect, it } from 'vitest';
import type { Kept } from '../../../src/domain/ports/pan-store';
import {
  type Mark,
  panId,
  type RackRecord,
  recordId,
} from '../../../src/domain/records/rack-records';
import { instant, midiNote } from '../../../src/domain/tuning/units';
import { createRecordKeeper } from '../../../src/state/keeping/record-keeper';

const mark = (id: string): Mark => ({
  kind: 'mark',
  shape: 1,
  id: recordId(id),
  pan: panId('p'),
  at: instant(0),
  round: null,
  note: midiNote(60),
  mark: 'buzzing',
});

function storeThat(answers: (call: number) => Kept) {
  const calls: (readonly RackRecord[])[] = [];
  return {
    calls,
    keep: async (records: readonly RackRecord[]): Promise<Kept> => {
      calls.push(records);
      return answers(calls.length);
    },
  };
}

const settle = () => new Promise((done) => setTimeout(done, 0));

describe('keeping records', () => {
  it('resolves once they are on disk', async () => {
    const store = storeThat(() => ({ kind: 'kept' }));
    const keeper = createRecordKeeper(store);
    const keeping = keeper.keep([mark('a')]);
    expect(keeper.saving.value.kind).toBe('keeping');
    await keeping;
    await settle();
    expect(keeper.saving.value.kind).toBe('kept');
    expect(store.calls).toHaveLength(1);
  });

  it('says why they are not kept, and keeps them with the next try, in their order', async () => {
    const store = storeThat((call) =>
      call === 1 ? { kind: 'trouble', trouble: 'full' } : { kind: 'kept' },
    );
    const keeper = createRecordKeeper(store);
    let isKept = false;
    void keeper.keep([mark('a')]).then(() => {
      isKept = true;
    });
    await settle();
    expect(keeper.saving.value).toEqual({ kind: 'not-kept', trouble: 'full' });
    expect(isKept).toBe(false);
    await keeper.keep([mark('b')]);
    expect(isKept).toBe(true);
    expect(store.calls.at(-1)?.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('tries again when asked', async () => {
    const store = storeThat((call) =>
      call === 1 ? { kind: 'trouble', trouble: 'failed' } : { kind: 'kept' },
    );
    const keeper = createRecordKeeper(store);
    void keeper.keep([mark('a')]);
    await settle();
    await keeper.retry();
    expect(keeper.saving.value.kind).toBe('kept');
  });

  it('keeps what comes in while it is busy afterwards, nothing twice', async () => {
    const store = storeThat(() => ({ kind: 'kept' }));
    const keeper = createRecordKeeper(store);
    await Promise.all(['a', 'b', 'c'].map((id) => keeper.keep([mark(id)])));
    expect(store.calls.flat().map(({ id }) => id)).toEqual(['a', 'b', 'c']);
  });
});
