// The advice for the note on the bench, from all that is known of its pan.

import { type Advice, type AdviceRules, adviceFor } from '../../domain/advice/advice';
import type { NoteSound } from '../../domain/advice/beyond-limits';
import { type BlowSet, blowSetsOf, noteTraits } from '../../domain/advice/blow-sets';
import { learnResponse, type ResponseModel } from '../../domain/advice/response-model';
import {
  type BenchCourse,
  changesBetween,
  isAwaiting,
  newestStep,
} from '../../domain/bench/bench-course';
import { lowerMedian } from '../../domain/numbers/averages';
import { keptReading } from '../../domain/reading/kept-reading';
import type { Reading } from '../../domain/reading/reading';
import type { BlowWhere } from '../../domain/records/blow-places';
import type { ReadingRecord } from '../../domain/records/rack-records';
import { newestPerNote } from '../../domain/records/record-order';
import { standardA4 } from '../../domain/tuning/equal-temperament';
import { cents, type Instant } from '../../domain/tuning/units';
import { judgeOf } from './bench-judging';
import type { OpenBench } from './open-bench';

export interface BenchAdvice {
  readonly advice: Advice;
  /** How many sets of this pan fell where blows are suggested now, from the same side. */
  readonly setsHere: number;
  /** The newest set did what the others of this pan contradict. */
  readonly isSurprise: boolean;
}

/** Null while there is nothing to advise on: no pan, no strike yet, blows that no strike has answered, another note measured. */
export function adviceOn(bench: OpenBench, rules: AdviceRules, now: Instant): BenchAdvice | null {
  const { around, course, check } = bench;
  const { reading } = newestStep(course);
  if (around.layout === null || check || reading === null || isAwaiting(course)) return null;
  const { layout } = around;
  const sets = blowSetsOf(around.blows, around.readings);
  const others = [...newestPerNote(around.readings)].filter(([note]) => note !== course.note);
  const row = setsInARow(course, sets);
  const model = lazily(() => learnResponse(sets, noteTraits(layout), now));
  const advice = adviceFor(
    {
      layout,
      judged: judgeOf(around, course.note)(reading),
      isSettled: reading.settled,
      walking: reading.walking,
      decaySeconds: decayOf(reading),
      marks: around.marks,
      others: new Map(others.map(([note, record]) => [note, soundOf(record)])),
      sets: row,
    },
    model,
    rules,
  );
  const newest = row.at(-1);
  return {
    advice,
    setsHere: sets.filter((set) => advice.kind === 'blows' && isSameWhere(set, advice)).length,
    isSurprise: sets.length > fewest && newest !== undefined && model.isContradicting(newest),
  };
}

/** A set is set against at least so many others. */
const fewest = 3;

const isSameWhere = (one: BlowWhere, other: BlowWhere): boolean =>
  one.place === other.place && one.side === other.side;

/** Learning takes time that is only spent where a place is to be chosen. */
function lazily(learn: () => ResponseModel): ResponseModel {
  let learned: ResponseModel | null = null;
  const model = (): ResponseModel => {
    learned ??= learn();
    return learned;
  };
  return {
    predict: (...where) => model().predict(...where),
    isContradicting: (set) => model().isContradicting(set),
    get setCount() {
      return model().setCount;
    },
  };
}

/** A note that was measured again without blows in between moved less than this, or something else was done to it, cents. */
const still = 2.5;

/** The newest logged sets of this bench with nothing unknown done to the note in between, oldest first. */
function setsInARow({ steps }: BenchCourse, sets: readonly BlowSet[]): readonly BlowSet[] {
  const byId = new Map(sets.map((set) => [set.id, set]));
  const row: BlowSet[] = [];
  for (let k = steps.length - 1; k > 0; k--) {
    const [before, step] = [steps[k - 1], steps[k]];
    if (!before || !step) break;
    if (step.blows !== null) {
      const set = byId.get(step.kept.blows ?? '');
      if (!set) break;
      row.unshift(set);
    } else if (before.reading && step.reading) {
      const [moved] = changesBetween(before.reading, step.reading);
      if (moved && Math.abs(moved.cents) > still) break;
    }
  }
  return row;
}

function soundOf(record: ReadingRecord): NoteSound {
  const reading = keptReading(record, { a4: standardA4, offset: cents(0) });
  return { hasOctave: reading.octave !== null, decaySeconds: decayOf(reading) };
}

/** The middle time constant of the fundamental. */
const decayOf = ({ strikes }: Reading): number | null =>
  lowerMedian(
    strikes
      .filter(({ isInferred }) => !isInferred)
      .map(({ fundamental }) => fundamental.decaySeconds),
  );
