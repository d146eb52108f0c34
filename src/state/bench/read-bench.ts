// Reads what a bench needs to know from the rack.

import { notesDisturbedBy } from '../../domain/advice/disturbed-notes';
import { courseAfter } from '../../domain/bench/bench-course';
import { benchLasts, benchStepsOf } from '../../domain/bench/bench-steps';
import { notesOf } from '../../domain/pans/layout';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import {
  type PanId,
  type PanRecords,
  type ReadingRecord,
  roundOf,
} from '../../domain/records/rack-records';
import { currentPan } from '../../domain/records/standing/current-pan';
import { standingMarks } from '../../domain/records/standing/standing-marks';
import { readingsWithoutErased, withoutErased } from '../../domain/records/standing/without-erased';
import { newestFinishedRounds } from '../../domain/rounds/finished-rounds';
import { panNow } from '../../domain/rounds/pan-now';
import { cents, type Instant, type MidiNote } from '../../domain/tuning/units';
import { type BenchSurroundings, type OpenBench, since } from './open-bench';

/** What is read from the rack. */
export type BenchStore = Pick<
  PanStore,
  'pan' | 'readingsOfRound' | 'readingsOfNote' | 'readingsOutside'
>;

export type BenchRead = OpenBench | 'missing' | StoreTrouble;

/** The bench of a note as its pan's records are now; what was done to it in the last hours is its trail. */
export async function readBench(
  store: BenchStore,
  subject: { readonly kind: 'pan'; readonly pan: PanId; readonly note: MidiNote },
  judging: CardSettings,
  now: Instant,
): Promise<BenchRead> {
  const { pan, note } = subject;
  const loaded = await store.pan(pan);
  if (loaded.kind === 'trouble') return loaded.trouble;
  const records = loaded.value;
  const valid = withoutErased(records);
  if (valid.edits.length === 0) return 'missing';
  const { fields } = currentPan(records);
  if (!notesOf(fields.layout).includes(note)) return 'missing';
  const readings = await readingsAround(store, records, note);
  if (typeof readings === 'string') return readings;
  const [newest] = newestFinishedRounds(records);
  const standing = panNow(newest ?? null, readings, records, judging);
  const a4 = fields.a4 ?? judging.a4;
  const around: BenchSurroundings = {
    name: fields.name,
    layout: fields.layout,
    a4,
    reference: standing.reference === 'pan' ? (standing.panPitch?.cents ?? cents(0)) : cents(0),
    marks: new Map([...standingMarks(records)].map(([each, { mark }]) => [each, mark])),
    readings,
    blows: valid.blows,
  };
  const aim = { a4, offset: cents(0) };
  const earlier = benchStepsOf(note, readings, valid.blows, aim, since(now, benchLasts));
  return { subject, around, course: courseAfter(note, earlier), check: null };
}

/** Valid readings of the newest round and those outside of rounds since, of the note, of those it may disturb, and of all that were ever hammered. */
async function readingsAround(
  store: BenchStore,
  records: PanRecords,
  note: MidiNote,
): Promise<readonly ReadingRecord[] | StoreTrouble> {
  const { fields } = currentPan(records);
  const [newest] = newestFinishedRounds(records);
  const notes = new Set([
    note,
    ...notesDisturbedBy(fields.layout, note).map((each) => each.note),
    ...withoutErased(records).blows.map((set) => set.note),
  ]);
  const all = await Promise.all([
    ...(newest ? [store.readingsOfRound(roundOf(newest))] : []),
    store.readingsOutside(records.pan, newest ?? null),
    ...[...notes].map((each) => store.readingsOfNote(records.pan, each)),
  ]);
  const found = new Map<string, ReadingRecord>();
  for (const each of all) {
    if (each.kind === 'trouble') return each.trouble;
    for (const reading of each.value) found.set(reading.id, reading);
  }
  return readingsWithoutErased([...found.values()], records.erasures);
}
