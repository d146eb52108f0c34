// Makes what the rack shows of a pan from its records: derived, made anew whenever they change.

import { notesOf } from '../pans/layout';
import { type PanRecords, type ReadingRecord, roundOf } from '../records/rack-records';
import { currentPan, fieldConflicts } from '../records/standing/current-pan';
import { openRounds } from '../records/standing/open-rounds';
import { standingStopgaps } from '../records/standing/standing-stopgaps';
import { readingsWithoutErased } from '../records/standing/without-erased';
import { newestFinishedRounds } from '../rounds/finished-rounds';
import { panNow } from '../rounds/pan-now';
import { resultOf } from '../rounds/result-of-round';
import { roundChanges } from '../rounds/round-changes';
import { type CardSettings, judgingText } from './card-settings';
import type { PanCard } from './pan-card';
import { tunerNeed } from './tuner-need';

/**
 * The card of a pan. `readings` are those of the two `newestFinishedRounds` and those outside of rounds since the newest
 * one, in any order; erased ones among them do not count. How the pan stands is `panNow`; how its notes drift by
 * themselves, from round to round, follows from the two rounds alone.
 */
export function makePanCard(
  records: PanRecords,
  readings: readonly ReadingRecord[],
  settings: CardSettings,
): PanCard {
  const { fields } = currentPan(records);
  const valid = readingsWithoutErased(readings, records.erasures);
  const rounds = newestFinishedRounds(records);
  const [last = null, before = null] = rounds.map((start) =>
    resultOf(start, valid, records, settings),
  );
  const now = panNow(rounds[0] ?? null, valid, records, settings);
  const panPitch = now.panPitch?.cents ?? null;
  return {
    version: 3,
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
    noteCount: new Set(notesOf(fields.layout)).size,
    lastRoundAt: last?.at ?? null,
    isProvisional: last?.isProvisional ?? false,
    openRound: openRoundOf(records),
    standings: now.standings,
    worst: now.worst.slice(0, 3).map(({ note }) => note),
    worked: now.notes
      .flatMap(({ note, work }) => (work === 'none' ? [] : [note]))
      .sort((low, high) => low - high),
    a4: fields.a4 ?? settings.a4,
    panPitch,
    stopgaps: [...standingStopgaps(records).keys()].sort((low, high) => low - high),
    ...tunerNeed({
      notes: now.notes,
      panPitch,
      drift: last && before ? roundChanges(before, last).meanChange : null,
    }),
  };
}

const openRoundOf = (records: PanRecords) => {
  const [newest] = openRounds(records);
  return newest ? roundOf(newest) : null;
};
