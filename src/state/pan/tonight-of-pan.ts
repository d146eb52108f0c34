// What an open pan can do tonight: which rounds are needed for that, and the result by the rules.
import { judgeTonight, type TonightResult } from '../../domain/knock-check/judge-tonight';
import { checksSinceTuning, roundBefore } from '../../domain/knock-check/knock-rounds';
import {
  type ReadingsByRound,
  roundSigns,
  type SignsByNote,
} from '../../domain/knock-check/round-signs';
import type { SavedTune, SetNeeds } from '../../domain/knock-check/saved-tunes';
import { neededClasses } from '../../domain/knock-check/set-needs';
import type { TonightRules } from '../../domain/knock-check/tonight-rules';
import {
  type KnockCheck,
  type ReadingRecord,
  type RoundStart,
  roundOf,
} from '../../domain/records/rack-records';
import { standingMarks } from '../../domain/records/standing/standing-marks';
import { standingStopgaps } from '../../domain/records/standing/standing-stopgaps';
import type { RoundResult } from '../../domain/rounds/round-result';
import type { Instant, MidiNote } from '../../domain/tuning/units';
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
  const [check = null] = checksSinceTuning(records);
  const [now = null] = rounds;
  return { check, now, before: now && roundBefore(rounds, now, check) };
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

/**
 * The signs of damage in `now`, compared with `before`; `readings` hold those of both rounds. A note that was measured
 * outside of rounds since shows the signs of that reading: `counting` of `panNow`.
 */
export function signsOfPan(
  { records }: OpenPan,
  { now, before }: TonightRounds,
  readings: ReadingsByRound,
  counting: readonly ReadingRecord[],
  highestWithPartials: MidiNote,
): SignsByNote {
  if (!now) return new Map();
  const newer = counting.filter(({ round }) => round === null);
  const isNewer = new Set(newer.map(({ note }) => note));
  const ofRound = (readings.get(roundOf(now)) ?? []).filter(({ note }) => !isNewer.has(note));
  const heard = new Map(readings).set(roundOf(now), [...ofRound, ...newer]);
  return roundSigns(records, { round: now, before }, heard, highestWithPartials);
}

/** The result for an open pan. `result` is how it stands now (`resultNow`), or null before the first round. */
export function tonightOfPan(
  pan: OpenPan,
  check: KnockCheck | null,
  result: RoundResult | null,
  signs: SignsByNote,
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
