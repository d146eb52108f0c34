import { describe, expect, it } from 'vitest';
import {
  type Mark,
  type MarkKind,
  panId,
  type RoundStart,
  recordId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { nextNote } from '../../../src/domain/rounds/round-progress';
import { hertz, instant, midiNote } from '../../../src/domain/tuning/units';
import { readRound } from '../../../src/state/round/read-round';
import { memoryPanStore } from '../memory-pan-store';

const pan = panId('pan');
const note = midiNote(88);
const start: RoundStart = {
  shape: 1,
  id: recordId('round'),
  pan,
  at: instant(1000),
  kind: 'round',
  way: 'guided',
  order: [note, midiNote(76)],
  conditions: { temperature: null, standing: 'settled' },
  a4: hertz(440),
};
const mark = (id: string, at: number, kind: MarkKind): Mark => ({
  shape: 1,
  id: recordId(id),
  pan,
  at: instant(at),
  kind: 'mark',
  round: roundOf(start),
  note,
  mark: kind,
});

/** The round as it is resumed when its marks come from the store in this order. */
async function resumedWith(marks: readonly Mark[]) {
  const { store } = memoryPanStore();
  await store.keep([start, ...marks]);
  const read = await readRound(store, pan, roundOf(start));
  if (read.kind !== 'read') throw new Error(read.kind);
  return read.round.progress;
}

describe('a round that is resumed', () => {
  it('does not bring back a mark that was taken back, in whatever order the marks are found', async () => {
    const dead = mark('z', 2000, 'dead');
    const takenBack = mark('a', 3000, 'none');
    for (const marks of [
      [dead, takenBack],
      [takenBack, dead],
    ]) {
      const progress = await resumedWith(marks);
      expect(progress.notes.get(note)?.mark).toBe('none');
      expect(nextNote(progress)).toBe(note);
    }
  });

  it('keeps a mark that was made again after it had been taken back', async () => {
    const marks = [mark('c', 4000, 'buzzing'), mark('b', 3000, 'none'), mark('d', 2000, 'dead')];
    expect((await resumedWith(marks)).notes.get(note)?.mark).toBe('buzzing');
  });
});
