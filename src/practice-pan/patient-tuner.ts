// A field tuner who does what the suggestions say and nothing else, on the metal of a simulated pan, without sound.

import { type Advice, adviceFor, type BenchNote } from '../domain/advice/advice';
import { type BlowSet, changeBetween, noteTraits } from '../domain/advice/blow-sets';
import type { Dose } from '../domain/advice/choose-place';
import type { ProfessionalLimits } from '../domain/advice/professional-limits';
import { learnResponse, type ResponseModel } from '../domain/advice/response-model';
import type { PanLayout } from '../domain/pans/layout';
import type { JudgedNote } from '../domain/reading/judge-note';
import { type BlowWhere, strengthOf } from '../domain/records/blow-places';
import type { ToleranceSet } from '../domain/tuning/tolerances';
import { cents, instant, type MidiNote } from '../domain/tuning/units';
import type { PracticePan } from './practice-pan';

export interface PatientRules {
  readonly limits: ToleranceSet;
  readonly professional: ProfessionalLimits;
  /** Stops after so many sets of blows. */
  readonly mostSets: number;
  /** What is known of the response after these sets; by default what they teach. */
  readonly know?: (sets: readonly BlowSet[]) => ResponseModel;
  /** Who says what to do next; by default the advice of the bench. */
  readonly suggest?: (note: BenchNote) => Suggestion;
  /** Told of every suggestion before it is followed. */
  readonly hear?: (suggestion: Suggestion, note: BenchNote) => void;
}

export type Suggestion =
  | ({ readonly kind: 'blows' } & BlowWhere & Dose)
  | Exclude<Advice, { readonly kind: 'blows' }>;

export interface PatientWork {
  /** The sets, as they were hammered and measured, oldest first. */
  readonly sets: readonly BlowSet[];
  /** Blows of each set. */
  readonly counts: readonly number[];
  /** What was advised in the end: to leave the note, to fetch a professional or, when the sets were used up, blows. */
  readonly last: Suggestion;
}

/** How many strikes are read after each set, and by how much they scatter, cents (as `usualScatter`). */
const strikes = 3;
const scatter = 0.3;
const minute = 60_000;

/**
 * Works on one note until there is no more to suggest; stops after each set, so that others can go on meanwhile.
 * `normal`: numbers of mean 0 and deviation 1, the errors of measuring.
 */
export function* workPatiently(
  pan: Pick<PracticePan, 'layout' | 'truth' | 'hammer'>,
  note: MidiNote,
  { limits, professional, mostSets, know = learnedOn(pan.layout), ...rules }: PatientRules,
  normal: () => number,
): Generator<BlowSet, PatientWork> {
  const sets: BlowSet[] = [];
  const counts: number[] = [];
  let judged = measure(pan, note, normal);
  const advise = (): Suggestion => {
    const bench = benchNote(pan.layout, judged, sets);
    const suggestion =
      rules.suggest?.(bench) ?? adviceFor(bench, know(sets), { limits, professional });
    rules.hear?.(suggestion, bench);
    return suggestion;
  };
  let last = advise();
  while (last.kind === 'blows' && sets.length < mostSets) {
    const { place, side, firmness, count } = last;
    pan.hammer(note, { place, side }, firmness, count);
    const before = judged;
    judged = measure(pan, note, normal);
    const set: BlowSet = {
      id: `set-${sets.length}`,
      at: instant(sets.length * minute),
      note,
      place,
      side,
      firmness,
      strength: strengthOf(firmness, count),
      ...changeBetween(before, judged),
    };
    sets.push(set);
    counts.push(count);
    yield set;
    last = advise();
  }
  return { sets, counts, last };
}

const learnedOn = (layout: PanLayout): ((sets: readonly BlowSet[]) => ResponseModel) => {
  const traits = noteTraits(layout);
  return (sets) => learnResponse(sets, traits, instant(sets.length * minute));
};

const benchNote = (layout: PanLayout, judged: JudgedNote, sets: readonly BlowSet[]): BenchNote => ({
  layout,
  judged,
  isSettled: true,
  walking: null,
  decaySeconds: null,
  marks: new Map(),
  others: new Map(),
  sets,
});

/** What three agreeing strikes would tell. */
function measure(
  pan: Pick<PracticePan, 'truth'>,
  note: MidiNote,
  normal: () => number,
): JudgedNote {
  const truth = pan.truth(note);
  if (!truth) throw new Error('the pan does not have this note');
  const error = () => (scatter / Math.sqrt(strikes)) * normal();
  const { fundamentalCents, octaveCents, third } = truth;
  const own = fundamentalCents + error();
  const [ofOctave, ofThird] = [
    fundamentalCents + octaveCents + error(),
    fundamentalCents + third.cents + error(),
  ];
  const sigmaCents = cents(scatter / Math.sqrt(strikes));
  const upper = (value: number) => ({
    cents: cents(value),
    centsFromOwn: cents(value - own),
    sigmaCents,
  });
  return {
    note,
    fundamental: { cents: cents(own), sigmaCents },
    octave: upper(ofOctave),
    octaveRival: null,
    third: { kind: third.kind, ...upper(ofThird) },
  };
}
