// Which notes of a pan are to be worked on after a round, and in which order.

import { shareOfGood } from '../reading/note-standing';
import type { PanId, RoundId } from '../records/rack-records';
import type { NoteResult } from '../rounds/judged-pan';
import type { RoundResult } from '../rounds/round-result';
import type { ToleranceSet } from '../tuning/tolerances';
import type { MidiNote } from '../tuning/units';
import { proposedOrder } from './work-order';

/** The notes of one pan that are to be worked on, in the user's order. */
export interface WorkPlan {
  readonly pan: PanId;
  readonly notes: readonly MidiNote[];
  /** The round that showed what is to be done: after another one the plan no longer holds. */
  readonly round: RoundId;
}

/** Cracked, dead and walking notes are not worked on; what is good is left alone. */
const isToWork = ({ standing, reason, judged }: NoteResult): boolean =>
  judged !== null &&
  (standing === 'playable' || standing === 'out' || standing === 'avoid') &&
  reason.kind === 'off';

/** The order that is proposed after a round; nothing on a pan with a crack, which is not hammered. */
export function proposedPlan(
  pan: PanId,
  { notes, round }: RoundResult,
  limits: ToleranceSet,
): WorkPlan {
  const isCracked = notes.some(({ mark }) => mark === 'cracked');
  const works = (isCracked ? [] : notes).filter(isToWork).map(({ note, judged }) => ({
    note,
    share: judged ? shareOfGood(judged, limits) : 0,
  }));
  return { pan, round, notes: proposedOrder(works) };
}

/** The user's own plan as long as it belongs to the newest round; otherwise the proposed one. */
export const planNow = (own: WorkPlan | null, proposed: WorkPlan): WorkPlan =>
  own?.pan === proposed.pan && own.round === proposed.round ? own : proposed;

/** One note earlier (−1) or later (+1) in the plan; unchanged at its ends. */
export function noteMoved(plan: WorkPlan, note: MidiNote, by: 1 | -1): WorkPlan {
  const at = plan.notes.indexOf(note);
  const other = plan.notes[at + by];
  if (at < 0 || other === undefined) return plan;
  return { ...plan, notes: plan.notes.with(at, other).with(at + by, note) };
}

export const withoutNote = (plan: WorkPlan, note: MidiNote): WorkPlan => ({
  ...plan,
  notes: plan.notes.filter((each) => each !== note),
});
