// A field tuner who does what the suggestions say and nothing else, on a simulated pan, without sound.

import type { BenchNote, SuggestedBlows } from '../../../src/domain/advice/advice';
import { changeOfErrors, noteErrors, partialsOff } from '../../../src/domain/advice/note-errors';
import { usualProfessionalLimits } from '../../../src/domain/advice/professional-limits';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { neighboursOf } from '../../../src/domain/pans/neighbours';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, type MidiNote } from '../../../src/domain/tuning/units';
import { verdictOn } from '../../../src/domain/tuning/verdict';
import {
  type PatientRules,
  type Suggestion,
  workPatiently,
} from '../../../src/practice-pan/patient-tuner';
import type { PracticeTruth } from '../../../src/practice-pan/practice-levels';
import { createPracticePan, type PracticePan } from '../../../src/practice-pan/practice-pan';
import { between, gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';

/** Fundamental against its target; octave and third against the own fundamental. */
export type Plant = readonly [fundamental: number, octave: number, third: number];

export interface TunedNote {
  readonly note: MidiNote;
  readonly sets: number;
  readonly last: Suggestion;
  readonly blows: number;
  readonly isInTune: boolean;
  /** Neighbours that are outside tolerance at the end; all were inside at the beginning. */
  readonly spoiled: readonly MidiNote[];
  /**
   * By how much a partial was at some time farther off than at the beginning, or than its limit where it began within,
   * cents.
   */
  readonly partialWorse: number;
  /** True values at the beginning and after each set. */
  readonly course: readonly Plant[];
  readonly places: readonly string[];
  /** The set that first made a partial more than 5 cents worse, or null. */
  readonly worseBy: string | null;
  /** Suggestions that were expected to move a partial out of its limit. */
  readonly movedOutOnPurpose: number;
  /** Sets after which a partial that had been within its limit was outside. */
  readonly movedOut: number;
}

const rules = {
  limits: usualTolerances,
  professional: usualProfessionalLimits,
  mostSets: 12,
};
const limits = [usualTolerances.good.main, usualTolerances.good.main, usualTolerances.good.third];
/** How far off the other notes are, cents. */
const othersOff = { main: 3, third: 8 };
const notes = notesOf(lowCLead);
const withPartials = notes.filter((note) => note <= usualTolerances.highestWithPartials);
const topNotes = notes.filter((note) => note > usualTolerances.highestWithPartials);

export interface TunedHow extends Pick<PatientRules, 'know' | 'suggest'> {
  /** One of the notes that are judged by their fundamental only. */
  readonly isTopNote?: boolean;
}

/** `know`: what the tuner is told of the pan's response after these sets; what they teach unless told. */
export function tuneByAdvice(seed: number, plant: Plant, how: TunedHow = {}): TunedNote {
  const random = seededRandom(seed * 7727 + 3);
  const normal = gaussianFrom(random);
  const candidates = how.isTopNote ? topNotes : withPartials;
  const note = candidates[Math.floor(random() * candidates.length)] ?? (60 as MidiNote);
  const planted = notes.map((each) => {
    const off = (most: number) => between(random, -most, most);
    const values: Plant =
      each === note ? plant : [off(othersOff.main), off(othersOff.main), off(othersOff.third)];
    return [each, truthOf(values)] as const;
  });
  const pan = createPracticePan(seed, { planted: new Map(planted) });
  const course: Plant[] = [valuesOf(pan, note)];
  let movedOutOnPurpose = 0;
  const hear = (suggestion: Suggestion, bench: BenchNote): void => {
    if (isMovingOut(suggestion, bench)) movedOutOnPurpose++;
  };
  const working = workPatiently(pan, note, { ...rules, ...how, hear }, normal);
  let step = working.next();
  for (; !step.done; step = working.next()) course.push(valuesOf(pan, note));
  const { sets, counts, last } = step.value;
  const places = sets.map(
    ({ firmness, place, side }, k) => `${counts[k]} ${firmness} ${place} ${side}`,
  );
  const isInTune = (each: MidiNote) => verdictOn(truthAsJudged(pan, each)).kind === 'aligned';
  const judgedParts = how.isTopNote ? ([0] as const) : ([0, 1, 2] as const);
  const beyond = (values: Plant, k: 0 | 1 | 2) => Math.abs(values[k]) - (limits[k] ?? 0);
  const worseAfter = (values: Plant): number =>
    Math.max(...judgedParts.map((k) => beyond(values, k) - Math.max(0, beyond(plant, k))));
  const firstWorse = course.findIndex((values) => worseAfter(values) > 5);
  return {
    note,
    sets: sets.length,
    last,
    isInTune: isInTune(note),
    spoiled: neighboursOf(lowCLead, note)
      .map((each) => each.note)
      .filter((each) => !isInTune(each)),
    blows: counts.reduce((sum, each) => sum + each, 0),
    partialWorse: Math.max(...course.map(worseAfter)),
    worseBy: places[firstWorse - 1] ?? null,
    movedOutOnPurpose,
    movedOut: course.filter((values, n) => {
      const before = course[n - 1];
      return before && judgedParts.some((k) => beyond(before, k) <= 0 && beyond(values, k) > 0);
    }).length,
    course,
    places,
  };
}

/** Whether a partial within its limit is expected outside after these blows; only the bench says what it expects. */
function isMovingOut(suggestion: Suggestion, { judged }: BenchNote): boolean {
  if (!('expected' in suggestion)) return false;
  const errors = noteErrors(judged, usualTolerances);
  const change = changeOfErrors((suggestion as SuggestedBlows).expected.mean);
  const off = partialsOff(errors);
  const after = errors.values.map((value, k) => value + (change[k] ?? 0));
  return after.some(
    (value, k) =>
      errors.weights[k as 0] > 0 &&
      !off.includes(k as 0) &&
      Math.abs(value) > errors.limits[k as 0],
  );
}

const truthOf = ([fundamental, octave, third]: Plant): PracticeTruth => ({
  fundamentalCents: cents(fundamental),
  octaveCents: cents(octave),
  third: { kind: 'double-octave', cents: cents(third) },
});

function valuesOf(pan: PracticePan, note: MidiNote): Plant {
  const truth = pan.truth(note);
  if (!truth) throw new Error('the note is missing');
  return [truth.fundamentalCents, truth.octaveCents, truth.third.cents];
}

function truthAsJudged(pan: PracticePan, note: MidiNote) {
  const [fundamental, octave, third] = valuesOf(pan, note);
  return {
    note,
    fundamental: { cents: cents(fundamental) },
    octave: { centsFromOwn: cents(octave) },
    third: { kind: 'double-octave' as const, centsFromOwn: cents(third) },
  };
}
