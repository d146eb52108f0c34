// The advice for the note on the bench, from all that is known of its pan.

import { effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { AdviceRules } from '../../domain/advice/advice';
import type { AdviceAnswer, AdviceQuestion } from '../../domain/advice/answer-question';
import type { NoteSound } from '../../domain/advice/beyond-limits';
import { type BlowSet, blowSetsOf } from '../../domain/advice/blow-sets';
import {
  type BenchCourse,
  changesBetween,
  isAwaiting,
  newestStep,
} from '../../domain/bench/bench-course';
import { lowerMedian } from '../../domain/numbers/averages';
import type { Adviser } from '../../domain/ports/adviser';
import { keptReading } from '../../domain/reading/kept-reading';
import type { Reading } from '../../domain/reading/reading';
import type { ReadingRecord } from '../../domain/records/rack-records';
import { newestPerNote } from '../../domain/records/record-order';
import { standardA4 } from '../../domain/tuning/equal-temperament';
import { cents, type Instant } from '../../domain/tuning/units';
import { judgeOf } from './bench-judging';
import type { OpenBench } from './open-bench';

export type BenchAdvice = AdviceAnswer;

/** What to ask; null while there is nothing to advise on: no pan, no strike yet, blows that no strike has answered, another note measured. */
export function adviceQuestion(
  bench: OpenBench,
  rules: AdviceRules,
  now: Instant,
): AdviceQuestion | null {
  const { around, course, check } = bench;
  const { reading } = newestStep(course);
  if (around.layout === null || check || reading === null || isAwaiting(course)) return null;
  const { layout } = around;
  const panSets = blowSetsOf(around.blows, around.readings);
  const others = [...newestPerNote(around.readings)].filter(([note]) => note !== course.note);
  const note = {
    layout,
    judged: judgeOf(around, course.note)(reading),
    isSettled: reading.settled,
    walking: reading.walking,
    decaySeconds: decayOf(reading),
    marks: around.marks,
    others: new Map(others.map(([each, record]) => [each, soundOf(record)])),
    sets: setsInARow(course, panSets),
  };
  return { note, rules, panSets, now };
}

/** Everything that a question depends on but the time: while all of it is the same, so is the answer. */
const dependsOn = (
  { around, course, check }: OpenBench,
  rules: AdviceRules,
): readonly unknown[] => [
  around.layout,
  around.a4,
  around.reference,
  around.marks,
  around.readings,
  around.blows,
  course,
  check === null,
  JSON.stringify(rules),
];

export interface AdvicePorts {
  /** The open bench, or null. */
  readonly bench: () => OpenBench | null;
  /** Null for those to whom nothing is suggested. */
  readonly rules: () => AdviceRules | null;
  readonly now: () => Instant;
  readonly adviser: Adviser;
}

/** The advice for what lies on the bench: asked for anew only when something it depends on has changed. */
export function followAdvice({
  bench,
  rules,
  now,
  adviser,
}: AdvicePorts): ReadonlySignal<BenchAdvice | null> {
  const advice = signal<BenchAdvice | null>(null);
  let asked: readonly unknown[] = [];
  let newest = 0;
  let of: Reading | null = null;
  effect(() => {
    const [open, by] = [bench(), rules()];
    const known = open && by ? dependsOn(open, by) : [];
    if (known.length === asked.length && known.every((each, k) => each === asked[k])) return;
    asked = known;
    const ticket = ++newest;
    const question = open && by ? adviceQuestion(open, by, untracked(now)) : null;
    const reading = open ? newestStep(open.course).reading : null;
    // What was said of the note before this strike holds no more.
    if (!question || reading !== of) advice.value = null;
    of = reading;
    if (!question) return;
    adviser.ask(question, (answer) => {
      if (ticket === newest) advice.value = answer;
    });
  });
  return advice;
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
