// A field tuner who does what the suggestions say and nothing else, on a simulated pan, without sound.

import type { Advice } from '../../../src/domain/advice/advice';
import { usualProfessionalLimits } from '../../../src/domain/advice/professional-limits';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { neighboursOf } from '../../../src/domain/pans/neighbours';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, type MidiNote } from '../../../src/domain/tuning/units';
import { verdictOn } from '../../../src/domain/tuning/verdict';
import { type PatientRules, workPatiently } from '../../../src/practice-pan/patient-tuner';
import type { PracticeTruth } from '../../../src/practice-pan/practice-levels';
import { createPracticePan, type PracticePan } from '../../../src/practice-pan/practice-pan';
import { between, gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';

/** Fundamental against its target; octave and third against the own fundamental. */
export type Plant = readonly [fundamental: number, octave: number, third: number];

export interface TunedNote {
  readonly note: MidiNote;
  readonly sets: number;
  readonly last: Advice;
  readonly isInTune: boolean;
  /** Neighbours that are outside tolerance at the end; all were inside at the beginning. */
  readonly spoiled: readonly MidiNote[];
  /** By how much the worst partial was at some time worse than the worst at the beginning, cents. */
  readonly worseThanBefore: number;
  /** The same for each partial by itself, counted from its limit where it began within. */
  readonly partialWorse: number;
  /** True values at the beginning and after each set. */
  readonly course: readonly Plant[];
  readonly places: readonly string[];
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
const candidates = notes.filter((note) => note <= usualTolerances.highestWithPartials);

/** `know`: what the tuner is told of the pan's response after these sets; what they teach unless told. */
export function tuneByAdvice(seed: number, plant: Plant, know?: PatientRules['know']): TunedNote {
  const random = seededRandom(seed * 7727 + 3);
  const normal = gaussianFrom(random);
  const note = candidates[Math.floor(random() * candidates.length)] ?? (60 as MidiNote);
  const planted = notes.map((each) => {
    const off = (most: number) => between(random, -most, most);
    const values: Plant =
      each === note ? plant : [off(othersOff.main), off(othersOff.main), off(othersOff.third)];
    return [each, truthOf(values)] as const;
  });
  const pan = createPracticePan(seed, { planted: new Map(planted) });
  const course: Plant[] = [valuesOf(pan, note)];
  const working = workPatiently(pan, note, know ? { ...rules, know } : rules, normal);
  let step = working.next();
  for (; !step.done; step = working.next()) course.push(valuesOf(pan, note));
  const { sets, counts, last } = step.value;
  const places = sets.map(
    ({ firmness, place, side }, k) => `${counts[k]} ${firmness} ${place} ${side}`,
  );
  const isInTune = (each: MidiNote) => verdictOn(truthAsJudged(pan, each)).kind === 'aligned';
  const worst = (values: Plant) => Math.max(...values.map(Math.abs));
  return {
    note,
    sets: sets.length,
    last,
    isInTune: isInTune(note),
    spoiled: neighboursOf(lowCLead, note)
      .map((each) => each.note)
      .filter((each) => !isInTune(each)),
    worseThanBefore: Math.max(...course.map((values) => worst(values) - worst(plant))),
    partialWorse: Math.max(
      ...course.flatMap((values) =>
        values.map(
          (value, k) => Math.abs(value) - Math.max(Math.abs(plant[k] ?? 0), limits[k] ?? 0),
        ),
      ),
    ),
    course,
    places,
  };
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
