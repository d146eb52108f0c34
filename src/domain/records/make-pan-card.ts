// Makes what the rack shows of a pan from its records: derived, made anew whenever they change.

import { notesOf } from '../pans/layout';
import type { MidiNote } from '../tuning/units';
import { standingOf } from '../work/note-standing';
import { roundChanges } from '../work/round-changes';
import { type RoundResult, roundResult } from '../work/round-result';
import { tunerNeed } from '../work/tuner-need';
import { type CardSettings, judgingText } from './card-settings';
import { currentPan, fieldConflicts } from './current-pan';
import { openRounds } from './open-rounds';
import type { PanCard } from './pan-card';
import {
  type MarkKind,
  type PanRecords,
  type ReadingRecord,
  type RoundStart,
  roundOf,
} from './rack-records';
import { olderFirst } from './record-order';
import { standingMarks } from './standing-marks';
import { standingStopgaps } from './standing-stopgaps';
import { readingsWithoutErased, withoutErased } from './without-erased';

/** The newest finished rounds of a pan, newest first, at most `count`: those a card needs the readings of. */
export function newestFinishedRounds(records: PanRecords, count = 2): readonly RoundStart[] {
  const { rounds, ends } = withoutErased(records);
  const finished = new Set(ends.filter((end) => end.ending === 'finished').map((end) => end.round));
  return rounds
    .filter((start) => finished.has(roundOf(start)))
    .sort((one, other) => olderFirst(other, one))
    .slice(0, count);
}

/**
 * The card of a pan. `readings` are those of the two `newestFinishedRounds`, in any order; erased ones among
 * them do not count.
 */
export function makePanCard(
  records: PanRecords,
  readings: readonly ReadingRecord[],
  settings: CardSettings,
): PanCard {
  const { fields } = currentPan(records);
  const marks = marksOf(records);
  const valid = readingsWithoutErased(readings, records.erasures);
  const [last = null, before = null] = newestFinishedRounds(records).map((start) =>
    resultOf(start, valid, records, settings),
  );
  const notes = [...new Set(notesOf(fields.layout))];
  const found =
    last?.notes ??
    notes.map((note) => ({
      note,
      ...standingOf({ judged: null, mark: marks.get(note) ?? 'none' }, settings.limits),
    }));
  const standings = { good: 0, playable: 0, out: 0, avoid: 0, unread: 0 };
  for (const { standing } of found) standings[standing]++;
  const panPitch = last?.panPitch?.cents ?? null;
  return {
    version: 1,
    judgedBy: judgingText(settings),
    pan: records.pan,
    name: fields.name,
    family: fields.family,
    layoutName: fields.layout.name,
    owner: fields.owner,
    maker: fields.maker,
    serial: fields.serial,
    isRemoved: fields.isRemoved,
    hasConflict: fieldConflicts(records).length > 0,
    noteCount: notes.length,
    lastRoundAt: last?.at ?? null,
    isProvisional: last?.isProvisional ?? false,
    openRound: openRoundOf(records),
    standings,
    worst: (last?.worst ?? []).slice(0, 3).map(({ note }) => note),
    a4: fields.a4 ?? settings.a4,
    panPitch,
    stopgaps: [...standingStopgaps(records).keys()].sort((low, high) => low - high),
    ...tunerNeed({
      notes: found,
      panPitch,
      drift: last && before ? roundChanges(before, last).meanChange : null,
    }),
  };
}

const openRoundOf = (records: PanRecords) => {
  const [newest] = openRounds(records);
  return newest ? roundOf(newest) : null;
};

const marksOf = (records: PanRecords, until?: number): ReadonlyMap<MidiNote, MarkKind> =>
  new Map([...standingMarks(records, until)].map(([note, { mark }]) => [note, mark]));

/**
 * The result of one round of a pan with the layout and the pitch that hold today, and with the marks that held
 * until the next round: a note that has died since was not dead then.
 */
export function resultOf(
  start: RoundStart,
  readings: readonly ReadingRecord[],
  records: PanRecords,
  { a4, ...judging }: CardSettings,
): RoundResult {
  const { fields } = currentPan(records);
  const round = roundOf(start);
  const next = newestFinishedRounds(records, Number.POSITIVE_INFINITY).findLast(
    ({ at }) => at > start.at,
  );
  return roundResult(
    {
      start,
      readings: readings.filter((reading) => reading.round === round),
      marks: marksOf(records, next?.at),
      layout: fields.layout,
      a4: fields.a4 ?? a4,
    },
    judging,
  );
}
