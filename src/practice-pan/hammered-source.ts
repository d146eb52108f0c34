// The practice pan as the practice bench uses it: struck, hammered, and compared with what patience would have made of it.
import { notesOf } from '../domain/pans/layout';
import type { HammeredSource, PatientOutcome } from '../domain/ports/practice-port';
import type { MidiNote } from '../domain/tuning/units';
import type { Judged } from '../domain/tuning/verdict';
import { type PatientRules, workPatiently } from './patient-tuner';
import { createPracticePan, type PracticePan, type PracticeStart } from './practice-pan';
import { gaussianFrom, seededRandom } from './seeded-random';

/** Nobody hammers a note more often than this in one sitting (chosen, no source). */
const mostSets = 12;

export function createHammeredSource(seed: number, start: PracticeStart = {}): HammeredSource {
  const pan = createPracticePan(seed, start);
  return {
    layout: pan.layout,
    strike: pan.strike,
    hammer: pan.hammer,
    tuning: () => tuningOf(pan),
    patientWork(notes, rules, rest) {
      const patient = createPracticePan(seed, start);
      return patientOutcome(patient, seed, notes, { ...rules, mostSets }, rest);
    },
  };
}

async function patientOutcome(
  pan: PracticePan,
  seed: number,
  notes: readonly MidiNote[],
  rules: PatientRules,
  rest: () => Promise<void>,
): Promise<PatientOutcome> {
  const normal = gaussianFrom(seededRandom(seed * 2741 + 13));
  const work: PatientOutcome['work'][number][] = [];
  for (const note of notes) {
    const working = workPatiently(pan, note, rules, normal);
    let step = working.next();
    for (; !step.done; step = working.next()) await rest();
    const { sets, last } = step.value;
    work.push({ note, sets: sets.length, end: last.kind === 'blows' ? 'sets-used-up' : last.kind });
  }
  return { tuning: tuningOf(pan), work };
}

const tuningOf = (pan: PracticePan): readonly Judged[] =>
  notesOf(pan.layout)
    .toSorted((low, high) => low - high)
    .flatMap((note) => {
      const truth = pan.truth(note);
      if (!truth) return [];
      const { fundamentalCents, octaveCents, third } = truth;
      return {
        note,
        fundamental: { cents: fundamentalCents },
        octave: { centsFromOwn: octaveCents },
        third: { kind: third.kind, centsFromOwn: third.cents },
      };
    });
