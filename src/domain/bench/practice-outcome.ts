// What hammering did to a simulated pan: which notes it improved and which it spoiled.

import {
  type JudgedStanding,
  shareOfGood,
  standingOf,
  standingRank,
} from '../reading/note-standing';
import type { ToleranceSet } from '../tuning/tolerances';
import type { MidiNote } from '../tuning/units';
import type { Judged } from '../tuning/verdict';
import { type PartialMadeWorse, partialsMadeWorse } from './made-worse';

export interface NoteOutcome {
  readonly note: MidiNote;
  readonly before: JudgedStanding;
  readonly after: JudgedStanding;
  readonly wasWorked: boolean;
  /** Of a top note, whose standing does not show it. */
  readonly madeWorse: readonly PartialMadeWorse[];
}

export interface PracticeOutcome {
  /** Notes that stand better now, or that were worked on and are closer to true. */
  readonly gained: readonly NoteOutcome[];
  /** Notes that stand worse now, or that were worked on and are further off; top notes also where a partial is. */
  readonly spoiled: readonly NoteOutcome[];
  /** Notes that were worked on and are as they were. */
  readonly unchanged: readonly NoteOutcome[];
}

/** A change below this share of the "good" limit counts as none: half a cent of five (chosen, no source). */
const leastChange = 0.1;

/** Compares two tunings of the same notes, both lists in the same order. */
export function practiceOutcome(
  before: readonly Judged[],
  after: readonly Judged[],
  worked: readonly MidiNote[],
  limits: ToleranceSet,
): PracticeOutcome {
  const then = new Map(before.map((each) => [each.note, each]));
  const compared = after.flatMap((now) => {
    const was = then.get(now.note);
    if (!was) return [];
    const outcome = {
      note: now.note,
      before: standingOf({ judged: was }, limits),
      after: standingOf({ judged: now }, limits),
      wasWorked: worked.includes(now.note),
      madeWorse: partialsMadeWorse(was, now, limits),
    };
    return { outcome, change: changeOf(was, now, outcome, limits) };
  });
  const those = (change: Change) =>
    compared.filter((each) => each.change === change).map(({ outcome }) => outcome);
  return {
    gained: those('gained'),
    spoiled: those('spoiled'),
    unchanged: those('unchanged').filter(({ wasWorked }) => wasWorked),
  };
}

type Change = 'gained' | 'spoiled' | 'unchanged';

function changeOf(was: Judged, now: Judged, outcome: NoteOutcome, limits: ToleranceSet): Change {
  if (outcome.madeWorse.length > 0) return 'spoiled';
  const steps = standingRank(outcome.after.standing) - standingRank(outcome.before.standing);
  if (steps !== 0) return steps < 0 ? 'gained' : 'spoiled';
  if (!outcome.wasWorked) return 'unchanged';
  const share = shareOfGood(now, limits) - shareOfGood(was, limits);
  if (Math.abs(share) < leastChange) return 'unchanged';
  return share < 0 ? 'gained' : 'spoiled';
}
