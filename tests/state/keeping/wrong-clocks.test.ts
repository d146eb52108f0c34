// Phones whose clocks are wrong: what was taken back stays taken back, and the last round is the last one.
import { describe, expect, it } from 'vitest';
import {
  type MarkKind,
  panId,
  type RackRecord,
  type RoundId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { standingMarks } from '../../../src/domain/records/standing/standing-marks';
import { standingStopgaps } from '../../../src/domain/records/standing/standing-stopgaps';
import { newestFinishedRounds } from '../../../src/domain/rounds/finished-rounds';
import { hertz, instant, midiNote } from '../../../src/domain/tuning/units';
import { newHead } from '../../../src/state/keeping/new-head';
import { createRecordTurns, turnedStore } from '../../../src/state/keeping/record-turns';
import { readRound } from '../../../src/state/round/read-round';
import * as fc from '../../properties';
import { memoryPanStore } from '../memory-pan-store';

const pan = panId('pan');
const notes = [60, 61].map(midiNote);
const hour = 3600 * 1000;
const day = 24 * hour;
const truth = 1.8e12;

const aKind = fc.constantFrom<MarkKind>('dead', 'buzzing', 'cracked', 'skipped', 'none');

const aStep = fc.record({
  /** Whose hands it is in. */
  phone: fc.nat(1),
  /** How far the clock of that phone is off by now, and a random name for what it makes. */
  off: fc.integer({ min: -7 * day, max: 7 * day }),
  name: fc.uuid(),
  isReopened: fc.boolean(),
  what: fc.oneof(
    fc.record({ kind: fc.constant('mark' as const), note: fc.nat(1), mark: aKind }),
    fc.record({ kind: fc.constant('stopgap' as const), note: fc.nat(1), isOn: fc.boolean() }),
    fc.record({ kind: fc.constant('round' as const) }),
  ),
});

interface Phone {
  readonly memory: ReturnType<typeof memoryPanStore>;
  turns: ReturnType<typeof createRecordTurns>;
}
const phone = (): Phone => ({ memory: memoryPanStore(), turns: createRecordTurns() });

const recordsOf = async ({ store }: { store: Phone['memory']['store'] }) => {
  const loaded = await store.pan(pan);
  if (loaded.kind !== 'loaded') throw new Error(loaded.kind);
  return loaded.value;
};

describe('a phone whose clock is up to seven days off', () => {
  it('takes back what it takes back, alone or after another phone whose clock is off as well', () =>
    fc.assert(
      fc.asyncProperty(fc.array(aStep, { minLength: 1, maxLength: 12 }), async (steps) => {
        const phones = [phone(), phone()] as const;
        const marks = new Map<number, MarkKind>();
        const stopgaps = new Map<number, boolean>();
        let round: RoundId | null = null;
        for (const [k, { phone: whose, off, name, isReopened, what }] of steps.entries()) {
          const [mine, other] = whose === 0 ? phones : ([phones[1], phones[0]] as const);
          if (isReopened) mine.turns = createRecordTurns();
          await mine.memory.store.keep(other.memory.records);
          const store = turnedStore(mine.memory.store, mine.turns);
          // The screen that an action is taken on has read the pan.
          await store.pan(pan);
          let made = 0;
          const ports = {
            clock: { now: () => instant(truth + k * hour + off) },
            identities: { next: () => `${name}-${++made}` },
            turns: mine.turns,
          };
          const head = () => newHead(pan, ports);
          const note = notes['note' in what ? what.note : 0] ?? midiNote(60);
          const records: RackRecord[] = [];
          if (what.kind === 'mark') {
            records.push({ ...head(), kind: 'mark', round, note, mark: what.mark });
            marks.set(note, what.mark);
          } else if (what.kind === 'stopgap') {
            const stopgap = what.isOn ? 'magnet' : 'none';
            records.push({ ...head(), kind: 'stopgap', note, stopgap });
            stopgaps.set(note, what.isOn);
          } else {
            const start = {
              ...head(),
              kind: 'round',
              way: 'guided',
              order: notes,
              conditions: { temperature: null, standing: null },
              a4: hertz(440),
            } as const;
            round = roundOf(start);
            records.push(start, { ...head(), kind: 'round-end', round, ending: 'finished' });
          }
          await store.keep(records);
          const all = await recordsOf(mine.memory);
          const shuffled = { ...all, marks: [...all.marks].reverse() };
          for (const each of notes) {
            const mark = marks.get(each) ?? 'none';
            expect(standingMarks(shuffled).get(each)?.mark ?? 'none').toBe(mark);
            expect(standingStopgaps(all).has(each)).toBe(stopgaps.get(each) ?? false);
          }
          const [last] = newestFinishedRounds(all, 1);
          expect(last ? roundOf(last) : null).toBe(round);
          if (what.kind === 'mark' && round !== null) {
            const read = await readRound(mine.memory.store, pan, round);
            if (read.kind !== 'read') throw new Error(read.kind);
            expect(read.round.progress.notes.get(note)?.mark).toBe(what.mark);
          }
        }
      }),
    ));

  it('goes on after a record of the far future, and shows its own time', async () => {
    const { memory, turns } = phone();
    const future = instant(8.64e15);
    const head = { shape: 1, pan, round: null, note: midiNote(60), kind: 'mark' } as const;
    const mark = (id: string, kind: MarkKind) => ({ ...head, id, at: future, mark: kind });
    await memory.store.keep([mark('z', 'dead') as unknown as RackRecord]);
    const store = turnedStore(memory.store, turns);
    await store.pan(pan);
    const ports = { clock: { now: () => instant(truth) }, identities: { next: () => 'a' }, turns };
    const made = newHead(pan, ports);
    expect(made.at).toBe(truth);
    await store.keep([{ ...made, kind: 'mark', round: null, note: midiNote(60), mark: 'none' }]);
    expect(standingMarks(await recordsOf(memory)).size).toBe(0);
  });
});
