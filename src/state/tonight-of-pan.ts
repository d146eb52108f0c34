// What an open pan can do tonight: which rounds are needed for that, and the result by the rules.
import type { DamageSign } from '../domain/knock-check/damage-evidence';
import { judgeTonight, type TonightResult } from '../domain/knock-check/judge-tonight';
import { panDamageSigns } from '../domain/knock-check/pan-damage-signs';
import { neededClasses, type SavedTune, type SetNeeds } from '../domain/knock-check/set-needs';
import type { TonightRules } from '../domain/knock-check/tonight-rules';
import type { Strike } from '../domain/measurement/strike';
import {
  type KnockCheck,
  type ReadingRecord,
  type RoundId,
  type RoundStart,
  roundOf,
} from '../domain/records/rack-records';
import { strikesOf } from '../domain/records/reading-values';
import { newestOf, olderFirst } from '../domain/records/record-order';
import { refusedInRound } from '../domain/records/refused-in-round';
import { standingMarks } from '../domain/records/standing-marks';
import { standingStopgaps } from '../domain/records/standing-stopgaps';
import { withoutErased } from '../domain/records/without-erased';
import { cents, type Instant, type MidiNote } from '../domain/tuning/units';
import { wishOf } from '../domain/work/judge-note';
import type { RoundResult } from '../domain/work/round-result';
import { lastTuning } from '../domain/work/tuner-baseline';
import type { OpenPan } from './pan-model';

export interface TonightRounds {
  readonly check: KnockCheck | null;
  /** The newest finished round. */
  readonly now: RoundStart | null;
  /** The newest one before the pan was knocked, or before `now`; one with three strikes a note where there is one. */
  readonly before: RoundStart | null;
}

/** The newest knock check of a pan since its last professional tuning, and the rounds that its result needs the readings of. */
export function tonightRounds({ records, rounds }: OpenPan): TonightRounds {
  const tunedAt = lastTuning(records)?.visitedAt ?? 0;
  // What was seen before a professional put the pan right is over.
  const check = newestOf(withoutErased(records).knockChecks.filter(({ at }) => at > tunedAt));
  const [now = null] = rounds;
  const isSinceKnock = check && now && (roundOf(now) === check.round || now.at >= check.at);
  const earlier = rounds.filter(
    (round) =>
      now &&
      round.at < now.at &&
      roundOf(round) !== check?.round &&
      (!isSinceKnock || round.at < check.at),
  );
  const before = earlier.find(({ way }) => way !== 'quick') ?? earlier[0] ?? null;
  return { check, now, before };
}

export interface TonightSettings {
  readonly needs: SetNeeds;
  readonly tunes: readonly SavedTune[];
  readonly rules: TonightRules;
}

export interface TonightOfPan extends TonightResult {
  /** When a magnet was put on a note that has one now. */
  readonly magnets: ReadonlyMap<MidiNote, Instant>;
}

type Signs = ReadonlyMap<MidiNote, readonly DamageSign[]>;

/** The signs of damage in `now`, compared with `before`; `readings` hold those of both rounds. */
export function signsOfPan(
  pan: OpenPan,
  { now, before }: TonightRounds,
  readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>,
  highestWithPartials: MidiNote,
): Signs {
  if (!now) return new Map();
  return panDamageSigns({
    layout: pan.current.fields.layout,
    strikes: strikesIn(pan, now, readings),
    refused: refusedInRound(
      roundOf(now),
      readings.get(roundOf(now)) ?? [],
      withoutErased(pan.records).marks,
    ),
    ...(before ? { before: strikesIn(pan, before, readings) } : {}),
    highestWithPartials,
  });
}

/** The result for an open pan. `result` is that of its newest finished round, or null. */
export function tonightOfPan(
  pan: OpenPan,
  check: KnockCheck | null,
  result: RoundResult | null,
  signs: Signs,
  { needs, tunes, rules }: TonightSettings,
): TonightOfPan {
  const { layout } = pan.current.fields;
  const magnets = new Map(
    [...standingStopgaps(pan.records)].map(([note, { at }]) => [note, at] as const),
  );
  const cracked = [...standingMarks(pan.records)].flatMap(([note, { mark }]) =>
    mark === 'cracked' ? [note] : [],
  );
  const judged = judgeTonight(
    { layout, check, result, cracked, signs, magnets, needed: neededClasses(needs, tunes) },
    rules,
  );
  return { ...judged, magnets };
}

/** The strikes of the newest reading of each note in a round. */
function strikesIn(
  pan: OpenPan,
  round: RoundStart,
  readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>,
): ReadonlyMap<MidiNote, readonly Strike[]> {
  const { layout } = pan.current.fields;
  return new Map(
    [...(readings.get(roundOf(round)) ?? [])].sort(olderFirst).map((reading) => {
      const offset = wishOf(layout, reading.note).offset ?? cents(0);
      return [reading.note, strikesOf(reading, { a4: round.a4, offset })] as const;
    }),
  );
}
