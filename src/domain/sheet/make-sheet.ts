// Makes the page for the tuner from the records of a pan.
import { newestSoftRound } from '../knock-check/knock-rounds';
import type { KnockSigns } from '../knock-check/round-signs';
import { notesOf } from '../pans/layout';
import type { CardSettings } from '../rack/card-settings';
import type { PanRecords, RoundStart, Taking } from '../records/rack-records';
import { isBefore, olderFirst } from '../records/record-order';
import { currentPan } from '../records/standing/current-pan';
import { standingMarks } from '../records/standing/standing-marks';
import { standingStopgaps } from '../records/standing/standing-stopgaps';
import { withoutErased } from '../records/standing/without-erased';
import { newestFinishedRounds } from '../rounds/finished-rounds';
import { type PanNow, resultNow } from '../rounds/pan-now';
import { roundChanges } from '../rounds/round-changes';
import type { RoundResult } from '../rounds/round-result';
import { type Baseline, tunerBaseline } from '../rounds/tuner-baseline';
import type { Instant } from '../tuning/units';
import { noteBlows } from './note-blows';
import type { Sheet, SheetRound, SheetSince } from './sheet';
import { sheetEvents } from './sheet-events';
import { sheetNotes } from './sheet-notes';

/**
 * The rounds a sheet is made of: the one it shows, the one that changes are counted from (if it is another), and those
 * that the signs of damage after the newest knock follow from.
 */
export interface SheetRounds {
  readonly shown: RoundStart | null;
  readonly before: RoundStart | null;
  readonly knock: readonly RoundStart[];
  readonly baseline: Baseline;
}

/**
 * The newest full round, or the newest quick one where there is no other; after a professional tuning only those
 * that came after it, as soon as there is one.
 */
export function sheetRounds(records: PanRecords): SheetRounds {
  const rounds = newestFinishedRounds(records, Number.POSITIVE_INFINITY);
  const baseline = tunerBaseline(records);
  const tunedAt = baseline.kind === 'tuning' ? baseline.visit.visitedAt : 0;
  const after = rounds.filter(({ at }) => at >= tunedAt);
  const of = after.length > 0 ? after : rounds;
  const shown = of.find(({ way }) => way !== 'quick') ?? of[0] ?? null;
  const from = baseline.kind === 'none' ? null : baseline.round;
  const isEarlier = from !== null && shown !== null && isBefore(from, shown);
  const soft = newestSoftRound(records);
  const knock = soft ? [soft.round, soft.before].flatMap((round) => round ?? []) : [];
  return { shown, before: isEarlier ? from : null, knock, baseline };
}

export interface SheetFindings {
  readonly records: PanRecords;
  readonly rounds: SheetRounds;
  /** The pan as it stands now, built on the round that is shown (`sheetRounds`). */
  readonly standing: PanNow;
  /** Of the round that is compared with. */
  readonly before: RoundResult | null;
  /** Of `SheetRounds.knock`. */
  readonly heard: KnockSigns | null;
  readonly judging: CardSettings;
  readonly contact: string;
  readonly now: Instant;
}

/** The sheet of a pan. `standing` and `before` are to be judged by `judging`. */
export function makeSheet(findings: SheetFindings): Sheet {
  const { records, rounds, standing, before, heard, judging } = findings;
  const shown = resultNow(standing);
  const { fields } = currentPan(records);
  const valid = withoutErased(records);
  const { baseline } = rounds;
  const from = baseline.kind === 'tuning' ? baseline.visit.visitedAt : 0;
  const changes = shown && before ? roundChanges(before, shown) : null;
  const stopgaps = standingStopgaps(records);
  return {
    madeAt: findings.now,
    pan: {
      name: fields.name,
      family: fields.family,
      owner: fields.owner,
      maker: fields.maker,
      serial: fields.serial,
      finish: fields.finish,
      remarks: fields.remarks,
    },
    layout: fields.layout,
    a4: fields.a4 ?? judging.a4,
    request: { wanted: fields.wanted, wantedBy: fields.wantedBy, contact: findings.contact },
    round: shown && sheetRound(shown, findings),
    panPitch: standing.panPitch,
    notes: sheetNotes({
      notes: [...new Set(notesOf(fields.layout))],
      now: standing,
      marks: new Map([...standingMarks(records)].map(([note, { mark }]) => [note, mark])),
      stopgaps: new Map([...stopgaps].map(([note, { stopgap }]) => [note, stopgap])),
      signs: heard?.signs ?? new Map(),
      areSignsEarlier: heard !== null && shown !== null && heard.round !== shown.round,
      changes,
      limits: judging.limits,
    }),
    since: sinceOf(baseline, changes),
    events: sheetEvents(records, from, heard),
    blows: noteBlows(valid.blows.filter(({ at }) => at >= from)),
    stopgaps: [...stopgaps.values()].flatMap(({ note, stopgap, at }) =>
      stopgap === 'none' ? [] : [{ note, kind: stopgap, at }],
    ),
  };
}

function sinceOf(baseline: Baseline, changes: ReturnType<typeof roundChanges> | null): SheetSince {
  switch (baseline.kind) {
    case 'tuning':
      return { kind: 'tuning', visit: baseline.visit, changes };
    case 'first-round':
      return { kind: 'first-round', at: baseline.round.at, changes };
    case 'none':
      return baseline;
  }
}

function sheetRound(
  { at, way, conditions, isProvisional, reference }: RoundResult,
  { standing: { counting }, judging, rounds: { baseline } }: SheetFindings,
): SheetRound {
  const { temperature, standing } = conditions;
  const readings = [...counting].sort(olderFirst);
  const takings = new Map<string, Taking>();
  for (const { taking } of readings) {
    const { source, sampleRate, processing, gaps, appVersion } = taking;
    const text = JSON.stringify([source, sampleRate, processing, gaps > 0, appVersion]);
    if (!takings.has(text)) takings.set(text, taking);
  }
  return {
    at,
    way,
    temperature,
    standing,
    isProvisional,
    isBeforeTuning: baseline.kind === 'tuning' && at < baseline.visit.visitedAt,
    limits: judging.limits,
    reference,
    takings: [...takings.values()],
  };
}
