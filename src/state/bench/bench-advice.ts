// The advice for the note on the bench, from all that is known of its pan.

import { effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { AdviceRules } from '../../domain/advice/advice';
import type { AdviceAnswer } from '../../domain/advice/answer-question';
import type { BenchQuestion } from '../../domain/bench/answer-on-bench';
import { type BenchCourse, isAwaiting, newestStep, noBlows } from '../../domain/bench/bench-course';
import type { Adviser } from '../../domain/ports/adviser';
import type { Reading } from '../../domain/reading/reading';
import type { Instant } from '../../domain/tuning/units';
import { judgeOf } from './bench-judging';
import type { OpenBench } from './open-bench';

export type BenchAdvice = AdviceAnswer;

/** While blows fall, the advice given before them stays: whoever hammers must be able to see it. */
const advisedOn = (course: BenchCourse): BenchCourse =>
  isAwaiting(course) ? noBlows(course) : course;

/** What to ask; null while there is nothing to advise on: no pan, no strike yet, another note measured. */
export function adviceQuestion(
  bench: OpenBench,
  rules: AdviceRules,
  now: Instant,
): BenchQuestion | null {
  const { around, check } = bench;
  const course = advisedOn(bench.course);
  const { reading } = newestStep(course);
  if (around.layout === null || check || reading === null) return null;
  return {
    layout: around.layout,
    judged: judgeOf(around, course.note)(reading),
    reading,
    course,
    marks: around.marks,
    readings: around.readings,
    blows: around.blows,
    rules,
    now,
  };
}

/** Everything that a question depends on except the time: as long as all of it is the same, so is the answer. */
const dependsOn = (
  { around, course, check }: OpenBench,
  rules: AdviceRules,
): readonly unknown[] => [
  around.layout,
  around.a4,
  around.reference,
  around.marks,
  // Blows that no strike has answered yet teach nothing, even where they are kept.
  ...(isAwaiting(course)
    ? [newestStep(advisedOn(course))]
    : [around.readings, around.blows, course]),
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
    const reading = open ? newestStep(advisedOn(open.course)).reading : null;
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
