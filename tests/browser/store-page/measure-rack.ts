// Times, in milliseconds, of what the app asks the store for, and of the rack on its way to a file and back.
import type { BackupFiles } from '../../../src/domain/ports/backup-files';
import type { CardCopy } from '../../../src/domain/ports/card-copy';
import type { FileOnHand } from '../../../src/domain/ports/file-handout';
import type { Loaded, PanStore } from '../../../src/domain/ports/pan-store';
import { readingValues } from '../../../src/domain/reading/reading-values';
import { roundOf } from '../../../src/domain/records/rack-records';
import { cents, hertz } from '../../../src/domain/tuning/units';
import { notes, rackPan, rackRound } from './fill-rack';

const aim = { a4: hertz(440), offset: cents(0) };

/** All cards, on a page that has not opened the database yet. */
export const timeRack = (store: PanStore, pans: number): Promise<number> =>
  timed(async () => {
    const { cards, stale } = loaded(await store.cards());
    expectCount('cards', cards.length + stale.length, pans);
  });

/** All cards of the rack from their copy outside the database. */
export const timeCopy = (copy: CardCopy, pans: number): Promise<number> =>
  timed(async () => expectCount('cards', copy.read().length, pans));

/** A pan's records, the readings of its newest two rounds, and those outside of rounds since: what its card is made of. */
export const timePan = (store: PanStore, pan: number, rounds: number): Promise<number> =>
  timed(async () => {
    const records = loaded(await store.pan(rackPan(pan)));
    expectCount('rounds', records.rounds.length, rounds);
    const readings = await Promise.all(
      [rounds - 1, rounds - 2].map((round) => store.readingsOfRound(rackRound(pan, round))),
    );
    expectCount('readings', readings.flatMap(loaded).length, 2 * notes.length);
    const newest = records.rounds.find((start) => roundOf(start) === rackRound(pan, rounds - 1));
    expectCount('newest rounds', newest ? 1 : 0, 1);
    const outside = loaded(await store.readingsOutside(rackPan(pan), newest ?? null));
    expectCount('readings outside of rounds', outside.length, 0);
  });

/** All readings of one note and their values. */
export const timeNote = (store: PanStore, pan: number, rounds: number): Promise<number> =>
  timed(async () => {
    const note = notes[pan % notes.length] ?? notes[0];
    if (note === undefined) throw new Error('The layout has no notes.');
    const readings = loaded(await store.readingsOfNote(rackPan(pan), note));
    const values = readings.map((reading) => readingValues(reading, aim));
    expectCount('values', values.length, rounds);
  });

export interface Exported {
  readonly file: FileOnHand;
  readonly milliseconds: number;
  readonly records: number;
}

export async function timeExport(backups: BackupFiles): Promise<Exported> {
  const begun = performance.now();
  const made = await backups.make({ kind: 'rack' });
  if (made.kind === 'trouble') throw new Error(`The store says ${made.trouble}.`);
  return {
    file: made.file,
    milliseconds: performance.now() - begun,
    records: made.counts.records,
  };
}

export interface Imported {
  readonly checked: number;
  readonly takenIn: number;
  readonly added: number;
}

export async function timeImport(backups: BackupFiles, file: FileOnHand): Promise<Imported> {
  const begun = performance.now();
  const check = await backups.check(file);
  if (check.kind === 'refused') throw new Error(`The backup is refused: ${check.why}.`);
  const checked = performance.now();
  const taken = await backups.takeIn(check.backup);
  if (taken.kind === 'trouble') throw new Error(`The store says ${taken.trouble}.`);
  return {
    checked: checked - begun,
    takenIn: performance.now() - checked,
    added: taken.added.records,
  };
}

async function timed(work: () => Promise<void>): Promise<number> {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
}

function loaded<T>(answer: Loaded<T>): T {
  if (answer.kind === 'trouble') throw new Error(`The store says ${answer.trouble}.`);
  return answer.value;
}

/** A time for something that was not there would be worth nothing. */
function expectCount(what: string, found: number, expected: number): void {
  if (found !== expected) throw new Error(`${found} ${what} instead of ${expected}`);
}
