// The way of the note since the bench was opened: a path of strikes for each partial, towards the line that is true.

import type { BenchCourse } from '../../../domain/bench/bench-course';
import type { JudgedNote } from '../../../domain/reading/judge-note';
import { type ToleranceSet, tolerancesAt } from '../../../domain/tuning/tolerances';
import type { Cents } from '../../../domain/tuning/units';
import { isOutside } from '../../../domain/tuning/verdict';
import { judgeOf } from '../../../state/bench/bench-judging';
import type { BenchSurroundings } from '../../../state/bench/open-bench';
import { benchWords, partialName } from '../../words/measuring/bench-words';
import { signedCents } from '../../words/words';
import { type TrailStrike, trailLane, trailSize } from './trail-geometry';
import './bench-trail.css';

export function BenchTrail({
  course,
  around,
  limits,
}: {
  readonly course: BenchCourse;
  readonly around: BenchSurroundings;
  readonly limits: ToleranceSet;
}) {
  const good = tolerancesAt(limits, 'good');
  const judge = judgeOf(around, course.note);
  let sets = 0;
  const strikes = course.steps.flatMap(({ blows, reading }) => {
    if (blows !== null) sets++;
    const step = sets;
    return (reading?.strikes ?? [])
      .filter((strike) => !strike.provisional)
      .map((strike) => ({ step, off: judge(strike) }));
  });
  if (strikes.length < 2) return null;
  const isTop = course.note > limits.highestWithPartials;
  const third = strikes.at(-1)?.off ?? null;
  const lanes = [
    {
      partial: 0 as const,
      limit: good.main,
      of: (k: number) => strikes[k]?.off.fundamental.cents ?? null,
    },
    { partial: 1 as const, limit: good.main, of: (k: number) => octaveOf(strikes[k]?.off) },
    {
      partial: 2 as const,
      limit: good.third,
      of: (k: number) => strikes[k]?.off.third?.centsFromOwn ?? null,
    },
  ].slice(0, isTop ? 1 : 3);
  return (
    <section class="trail" aria-label={benchWords.trail}>
      <h2>{benchWords.trail}</h2>
      {lanes.map(({ partial, limit, of }) => (
        <Lane
          key={partial}
          name={partialName(partial, third)}
          strikes={strikes.map(({ step }, k) => ({ step, cents: of(k) }))}
          limit={limit}
        />
      ))}
      <p class="aside">{benchWords.trailHint}</p>
    </section>
  );
}

const octaveOf = (off: JudgedNote | undefined): number | null =>
  off?.octave && !off.octaveRival ? off.octave.centsFromOwn : null;

function Lane({
  name,
  strikes,
  limit,
}: {
  readonly name: string;
  readonly strikes: readonly TrailStrike[];
  readonly limit: Cents;
}) {
  const { marks, blows, limits } = trailLane(strikes, limit);
  const [first] = marks;
  const last = marks.at(-1);
  if (!first || !last) return null;
  const { width, height, middle, left, right } = trailSize;
  const label = benchWords.trailOf(
    name,
    signedCents(first.cents),
    signedCents(last.cents),
    marks.length,
  );
  const isFar = (cents: number) => isOutside(cents as Cents, limit);
  return (
    <figure class="lane">
      <figcaption>
        {name} <b>{signedCents(first.cents)}</b> → <b>{signedCents(last.cents)}</b>
      </figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
        <path class="lane-true" d={`M${left} ${middle}H${right}`} />
        {limits.map((y) => (
          <path key={y} class="lane-limit" d={`M${left} ${y}H${right}`} />
        ))}
        <polyline class="lane-way" points={marks.map(({ x, y }) => `${x},${y}`).join(' ')} />
        {blows.map((x) => (
          <path key={x} class="lane-blows" d={`M${x} ${height - 12}v10m-3.5 -4l3.5 4l3.5 -4`} />
        ))}
        {marks.map(({ x, y, cents }, k) => (
          <ellipse
            key={x}
            class={`lane-mark ${isFar(cents) ? 'far' : 'near'} ${k === marks.length - 1 ? 'newest' : ''}`}
            cx={x}
            cy={y}
            rx={k === marks.length - 1 ? 8 : 5}
            ry={k === marks.length - 1 ? 5.5 : 3.5}
          />
        ))}
      </svg>
    </figure>
  );
}
