// The three partials of a note over time, each in a chart of its own, one below the other on the same days.

import type { HistoryPoint, HistoryValue } from '../../../domain/rounds/note-history';
import type { ToleranceSet } from '../../../domain/tuning/tolerances';
import { dayWords } from '../../words/day-words';
import { courseWords, historyWords } from '../../words/history-words';
import { signedTenths } from '../../words/result-words';
import { words } from '../../words/words';
import '../drawing/note-rows.css';
import { type ChartLook, TimeChart } from './time-chart';

interface Line {
  readonly name: string;
  readonly look: ChartLook;
  readonly good: number;
  readonly of: (point: HistoryPoint) => HistoryValue | null;
}

export function NoteCharts({
  points,
  limits: { good },
}: {
  readonly points: readonly HistoryPoint[];
  readonly limits: ToleranceSet;
}) {
  const kinds = new Set(points.flatMap(({ third }) => (third ? [third.kind] : [])));
  const [kind] = kinds;
  const lines: readonly Line[] = [
    { name: words.fundamental, look: 'round', good: good.main, of: (point) => point.fundamental },
    { name: words.octave, look: 'square', good: good.main, of: (point) => point.octave },
    {
      name: kind !== undefined && kinds.size === 1 ? words.third[kind] : words.thirdUnknown,
      look: 'triangle',
      good: good.third,
      of: (point) => point.third,
    },
  ];
  const [from, to] = [points[0]?.at ?? 0, points.at(-1)?.at ?? 0];
  return (
    <section class="charts" aria-label={historyWords.title}>
      {lines.map(({ name, look, good: within, of }) => {
        const values = points.flatMap((point) => {
          const value = of(point);
          return value ? [{ ...value, at: point.at, isProvisional: point.isProvisional }] : [];
        });
        const last = values.at(-1);
        return (
          values.length > 0 && (
            <TimeChart
              key={look}
              name={name}
              latest={last ? signedTenths(last.cents) : ''}
              spoken={courseWords(values)}
              look={look}
              values={values}
              from={from}
              to={to}
              good={within}
              least={Math.max(10, within)}
            />
          )
        );
      })}
      <p class="chart-days">
        <span>{dayWords(from)}</span>
        {to > from && <span>{dayWords(to)}</span>}
      </p>
      <p class="quiet">{historyWords.noteKey(goodWords(good.main, good.third))}</p>
    </section>
  );
}

/** "±5, third ±10". */
const goodWords = (main: number, third: number): string =>
  main === third ? `±${main}` : `±${main}, third partial ±${third}`;
