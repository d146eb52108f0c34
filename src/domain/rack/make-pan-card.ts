// Makes what the rack shows of a pan from its records: derived, made anew whenever they change.

import { notesOf } from '../pans/layout';
import { standingOf } from '../reading/note-standing';
import { type PanRecords, type ReadingRecord, roundOf } from '../records/rack-records';
import { currentPan, fieldConflicts } from '../records/standing/current-pan';
import { openRounds } from '../records/standing/open-rounds';
import { markKinds } from '../records/standing/standing-marks';
import { standingStopgaps } from '../records/standing/standing-stopgaps';
import { readingsWithoutErased } from '../records/standing/without-erased';
import { newestFinishedRounds } from '../rounds/finished-rounds';
import { resultOf } from '../rounds/result-of-round';
import { roundChanges } from '../rounds/round-changes';
import { type CardSettings, judgingText } from './card-settings';
import type { PanCard } from './pan-card';
import { tunerNeed } from './tuner-need';

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
  const marks = markKinds(records);
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
