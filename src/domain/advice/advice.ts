// What to do about a note on the bench: blows at a place, nothing, or a professional. Data only; the sentences are made elsewhere.

import { partialIndices } from '../numbers/three-partials';
import type { PanLayout } from '../pans/layout';
import type { JudgedNote } from '../reading/judge-note';
import type { Walk } from '../reading/walking';
import type { MarkKind } from '../records/rack-records';
import type { ToleranceSet } from '../tuning/tolerances';
import { type Cents, cents, type MidiNote } from '../tuning/units';
import { beyondLimits, type NoteSound, type ProfessionalReason } from './beyond-limits';
import type { BlowSet } from './blow-sets';
import { choosePlace, isTrial, type PlaceChoice } from './choose-place';
import { type DisturbedNote, notesDisturbedBy } from './disturbed-notes';
import {
  errorSum,
  errorsBefore,
  isJudged,
  type NoteErrors,
  noteErrors,
  partialsOff,
} from './note-errors';
import type { ProfessionalLimits } from './professional-limits';
import type { ResponseModel } from './response-model';

/** A note on the bench and what is known around it. */
export interface BenchNote {
  readonly layout: PanLayout;
  /** The newest reading, judged by the user's reference and by what the note is meant to be. */
  readonly judged: JudgedNote;
  readonly isSettled: boolean;
  readonly walking: Pick<Walk, 'centsPerStrike'> | null;
  /** Time constant of its fundamental, or null if unknown. */
  readonly decaySeconds: number | null;
  /** The marks of the pan's notes that hold now. */
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  /** Other notes of the pan as last measured. */
  readonly others: ReadonlyMap<MidiNote, NoteSound>;
  /** Sets on this note since the bench was opened, oldest first, nothing else done to it in between. */
  readonly sets: readonly BlowSet[];
}

export interface AdviceRules {
  readonly limits: ToleranceSet;
  readonly professional: ProfessionalLimits;
}

export type LeaveReason =
  | { readonly kind: 'dead' }
  /** Not sure of the note: too few strikes agree. */
  | { readonly kind: 'not-settled' }
  | { readonly kind: 'walking'; readonly centsPerStrike: Cents }
  /** It is not known which of two lines is the note's own octave: damp the partner first. */
  | { readonly kind: 'octave-open' }
  | { readonly kind: 'aligned' }
  /** A top note within two cents. */
  | { readonly kind: 'high-note'; readonly cents: Cents }
  /** This many sets in a row did not help. */
  | { readonly kind: 'no-help'; readonly sets: number }
  /** No place is expected to make it better once scatter and overshoot are counted in. */
  | { readonly kind: 'nothing-helps' }
  /** A place would help on average, but it is more likely to do harm than good. */
  | { readonly kind: 'too-unsure' };

export interface SuggestedBlows extends PlaceChoice {
  readonly kind: 'blows';
  /** What is off now, the most important partial first. */
  readonly off: readonly PartialOff[];
  /** What it may disturb and what must be checked afterwards. */
  readonly disturbs: readonly DisturbedNote[];
}

export interface PartialOff {
  readonly partial: 'fundamental' | 'octave' | 'third';
  /** Fundamental against its target, the others against the own fundamental. */
  readonly cents: Cents;
}

export type Advice =
  | SuggestedBlows
  | { readonly kind: 'leave'; readonly why: LeaveReason }
  | { readonly kind: 'professional'; readonly why: ProfessionalReason };

/** High notes are left alone within this, whatever the tolerance (common practice, no source). */
const highNoteEnough = 2;
/**
 * Stop after this many sets in a row without help. Single light blows only try a place and are not counted (own
 * choice, tried with `npm run bench:advice`).
 */
const patience = 3;
/**
 * Stop after this many sets of any kind that together left the note no better (own choice, tried with `npm run
 * bench:advice`).
 */
const patienceInAll = 9;
const partialNames = ['fundamental', 'octave', 'third'] as const;

/** The advice for a note. Marks and doubts come before anything computed. */
export function adviceFor(note: BenchNote, model: ResponseModel, rules: AdviceRules): Advice {
  const errors = noteErrors(note.judged, rules.limits);
  const professional = professionalReason(note, errors, rules);
  if (professional) return { kind: 'professional', why: professional };
  const leave = leaveReason(note, errors, rules);
  if (leave) return { kind: 'leave', why: leave };
  const choice = choosePlace(note.judged.note, errors, model, note.sets);
  if (typeof choice === 'string') return { kind: 'leave', why: { kind: choice } };
  return {
    kind: 'blows',
    ...choice,
    off: partialsOff(errors).map((k) => ({
      partial: partialNames[k],
      cents: cents(errors.values[k]),
    })),
    disturbs: notesDisturbedBy(note.layout, note.judged.note),
  };
}

function professionalReason(
  { layout, judged, marks, walking, decaySeconds, others }: BenchNote,
  errors: NoteErrors,
  { limits, professional }: AdviceRules,
): ProfessionalReason | null {
  const { note } = judged;
  // A cracked drum is not hammered anywhere; the other drums of a set may be.
  const drum = layout.drums.find(({ notes }) => notes.some((place) => place.note === note));
  const cracked = [note, ...(drum?.notes ?? []).map((place) => place.note)].find(
    (each) => marks.get(each) === 'cracked',
  );
  if (cracked !== undefined) return { kind: 'cracked', note: cracked };
  return beyondLimits(
    {
      hasOctave: judged.octave !== null,
      needsOctave: note <= limits.highestWithPartials,
      off: partialIndices.filter((k) => isJudged(errors, k)).map((k) => errors.values[k]),
      decaySeconds,
      walking,
    },
    notesDisturbedBy(layout, note).flatMap((each) =>
      each.kind === 'neighbour' ? (others.get(each.note) ?? []) : [],
    ),
    professional,
  );
}

function leaveReason(
  { judged, marks, isSettled, walking, sets }: BenchNote,
  errors: NoteErrors,
  { limits }: AdviceRules,
): LeaveReason | null {
  if (marks.get(judged.note) === 'dead') return { kind: 'dead' };
  if (walking) return { kind: 'walking', centsPerStrike: walking.centsPerStrike };
  if (!isSettled) return { kind: 'not-settled' };
  const isTop = judged.note > limits.highestWithPartials;
  const { cents: off } = judged.fundamental;
  if (isTop && Math.abs(off) <= highNoteEnough) return { kind: 'high-note', cents: off };
  if (judged.octaveRival && !isTop) return { kind: 'octave-open' };
  if (partialsOff(errors).length === 0) return { kind: 'aligned' };
  const vain = inVain(errors, sets);
  return vain > 0 ? { kind: 'no-help', sets: vain } : null;
}

/** How many of the last sets did nothing for the note, one by one or taken together; 0 if they helped. */
function inVain(errors: NoteErrors, sets: readonly BlowSet[]): number {
  const sumBefore = (k: number): number =>
    errorSum({ ...errors, values: errorsBefore(errors, sets.slice(k)) });
  const tail = sets.flatMap((set, k) => (isTrial(set) ? [] : [k])).slice(-patience);
  const first = tail[0];
  const noneHelped =
    tail.length === patience && tail.every((k) => sumBefore(k + 1) >= sumBefore(k));
  if (first !== undefined && noneHelped) return sets.length - first;
  const many = sets.length - patienceInAll;
  return many >= 0 && errorSum(errors) >= sumBefore(many) ? patienceInAll : 0;
}
