// Makes what the rack shows of a pan from its records: derived, made anew whenever they change.

import { notesOf } from '../pans/layout';
import { type PanRecords, type ReadingRecord, roundOf } from '../records/rack-records';
import { currentPan, fieldConflicts } from '../records/standing/current-pan';
import { openRounds } from '../records/standing/open-rounds';
import { standingStopgaps } from '../records/standing/standing-stopgaps';
import { readingsWithoutErased } from '../records/standing/without-erased';
import { baseRound, isOfFewNotes, mostLookedThrough } from '../rounds/base-round';
import { newestFinishedRounds } from '../rounds/finished-rounds';
import { panNow } from '../rounds/pan-now';
import { resultOf } from '../rounds/result-of-round';
import { type RoundChanges, roundChanges } from '../rounds/round-changes';
import { roundHead } from '../rounds/round-result';
import { type CardSettings, judgingText } from './card-settings';
import type { PanCard } from './pan-card';
import { type FromNotes, tunerNeed } from './tuner-need';

/**
 * The card of a pan. `readings` are those of its newest finished rounds, back to the second that is not of few notes
 * (`isOfFewNotes`), and those outside of rounds since the first of them, in any order; erased ones among them do not
 * count. How the pan stands is `panNow`; how its notes drift by themselves follows from the two rounds alone.
 */
export function makePanCard(
  records: PanRecords,
  readings: readonly ReadingRecord[],
  settings: CardSettings,
): PanCard {
  const { fields } = currentPan(records);
  const valid = readingsWithoutErased(readings, records.erasures);
  const rounds = newestFinishedRounds(records, mostLookedThrough);
  const base = baseRound(rounds, valid, fields.layout);
  const [last = null, before = null] = rounds
    .filter((start) => !isOfFewNotes(start, valid, fields.layout))
    .map((start) => resultOf(start, valid, records, settings));
  const now = panNow(base, valid, records, settings);
  const panPitch = now.panPitch?.cents ?? null;
  const noteCount = new Set(notesOf(fields.layout)).size;
  const [newest = null] = rounds;
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
    noteCount,
    lastRoundAt: newest?.at ?? null,
    isProvisional: base !== null && roundHead(base).isProvisional,
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
      panPitch: now.panPitch && { cents: now.panPitch.cents, from: now.panPitch.notes.length },
      drift: last && before && driftOf(roundChanges(before, last), noteCount),
    }),
  };
}

/** What a few notes did tells nothing about the pan. */
function driftOf({ meanChange, notes }: RoundChanges, noteCount: number): FromNotes | null {
  if (meanChange === null || 2 * notes.length < noteCount) return null;
  return { cents: meanChange, from: notes.length };
}

const openRoundOf = (records: PanRecords) => {
  const [newest] = openRounds(records);
  return newest ? roundOf(newest) : null;
};
