// Which notes of a pan are to be worked on as it stands now, which are to be struck first, and in which order.

import type { PanId, RoundId } from '../records/rack-records';
import type { NoteResult } from '../rounds/judged-pan';
import type { NoteNow } from '../rounds/pan-now';
import { octaveOrder } from '../rounds/round-order';
import type { RoundResult } from '../rounds/round-result';
import type { ToleranceSet } from '../tuning/tolerances';
import type { MidiNote } from '../tuning/units';

/** The notes of one pan that are to be worked on, in the user's order. */
export interface WorkPlan {
  readonly pan: PanId;
  readonly notes: readonly MidiNote[];
  /** The round that showed what is to be done: after another one the plan no longer holds. */
  readonly round: RoundId;
}

export interface ProposedWork {
  readonly plan: WorkPlan;
  /** Nobody should hammer on one strike: these are struck three times before they are worked on. */
  readonly strikeFirst: readonly MidiNote[];
}

/** A note as a round found it, or as it stands now. */
type Found = NoteResult & Partial<Pick<NoteNow, 'work'>>;

/** A top note this close is left alone, cents (common practice, no source). */
const topNoteEnough = 2;

/** Cracked, dead and walking notes are not worked on; what is good is left alone. */
const isToWork = ({ standing, reason }: Found): boolean =>
  (standing === 'playable' || standing === 'out' || standing === 'avoid') && reason.kind === 'off';

const isNearEnough = ({ judged }: Found, { highestWithPartials }: ToleranceSet): boolean =>
  judged !== null &&
  judged.note > highestWithPartials &&
  Math.abs(judged.fundamental.cents) <= topNoteEnough;

/** Hammered since it was measured; a marked or walking note need not be struck to know enough. */
const isOpen = ({ work, reason }: Found): boolean =>
  work === 'not-measured' && reason.kind !== 'mark' && reason.kind !== 'walking';

/**
 * The order that is proposed: notes of one name from the highest down, so that each note's octave meets a note above that
 * is right already; the names from the one with the highest note down (common practice, no source). Only notes whose
 * reading is settled are in it. Nothing on a pan with a crack, which is not hammered.
 */
export function proposedWork(
  pan: PanId,
  { notes, round }: Pick<RoundResult, 'round'> & { readonly notes: readonly Found[] },
  limits: ToleranceSet,
): ProposedWork {
  const isCracked = notes.some(({ mark }) => mark === 'cracked');
  const wanted = (isCracked ? [] : notes).filter(
    (each) => isOpen(each) || (isToWork(each) && !isNearEnough(each, limits)),
  );
  const isKnown = (each: Found): boolean => each.reading?.settled === true && !isOpen(each);
  const those = (known: boolean): readonly MidiNote[] =>
    octaveOrder(wanted.filter((each) => isKnown(each) === known).map(({ note }) => note));
  return { plan: { pan, round, notes: those(true) }, strikeFirst: those(false) };
}

/**
 * The user's own order of what is still to be done, as long as it belongs to the newest round; otherwise the proposed
 * one. What has been put right since is not in it any more.
 */
export function planNow(own: WorkPlan | null, proposed: WorkPlan): WorkPlan {
  if (own?.pan !== proposed.pan || own.round !== proposed.round) return proposed;
  const left = own.notes.filter((note) => proposed.notes.includes(note));
  return left.length === own.notes.length ? own : { ...own, notes: left };
}

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
