// What a person with a hammer in the hand must see, on one screen: word and number, the partials, and the next step.

import type { ComponentChildren } from 'preact';
import { effectOfNewest, newestReading, openingReading } from '../../../domain/bench/bench-course';
import { partialsMadeWorse } from '../../../domain/bench/made-worse';
import type { Reading } from '../../../domain/reading/reading';
import type { ToleranceSet } from '../../../domain/tuning/tolerances';
import type { Verdict } from '../../../domain/tuning/verdict';
import { judgeOf } from '../../../state/bench/bench-judging';
import type { BenchModel } from '../../../state/bench/bench-model';
import { courseOf, noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import type { ListenModel } from '../../../state/listening/listen-model';
import { Readout } from '../listen/readout';
import { CoverHint } from './cover-hint';
import { HandsLines } from './hands-lines';
import { HandsStatus } from './hands-status';
import { NextStep } from './next-step';
import './bench-hands.css';

export function BenchHands({
  model,
  listen,
  bench,
  limits,
  verdictOf,
  children,
}: {
  readonly model: BenchModel;
  readonly listen: ListenModel;
  readonly bench: OpenBench;
  readonly limits: ToleranceSet;
  readonly verdictOf: (reading: Reading) => Verdict;
  /** What else must be in sight: the way to the cautions, and what could not be kept. */
  readonly children: ComponentChildren;
}) {
  const { check, course, around } = bench;
  const judge = judgeOf(around, noteHeard(bench));
  const reading = newestReading(courseOf(bench));
  const opening = check ? null : openingReading(course);
  const before = check ? null : (effectOfNewest(course)?.before ?? null);
  const now = reading && judge(reading);
  const worse = now && opening ? partialsMadeWorse(judge(opening), now, limits) : [];
  const shown = model.advice.value;
  return (
    <section class="hands">
      <div class="hands-word">
        <Readout
          phase={model.phase.value}
          expected={noteHeard(bench)}
          onName={() => undefined}
          verdictOf={verdictOf}
          short
        />
        <HandsStatus model={model} listen={listen} bench={bench} />
        {children}
      </div>
      <div class="hands-side">
        <HandsLines before={before && judge(before)} now={now} limits={limits} worse={worse} />
        {shown && !check && <NextStep advice={shown.advice} />}
        {!reading && <CoverHint bench={bench} reading={null} />}
      </div>
    </section>
  );
}
