// The values of charts as a table, the newest first: a day, what was found, how warm it was.
import type { ComponentChildren } from 'preact';
import type { HistoryValue } from '../../../domain/rounds/note-history';
import { dayWords } from '../../words/day-words';
import { historyWords } from '../../words/history-words';
import { signedTenths } from '../../words/result-words';
import { tenthsUp } from '../../words/words';
import './time-chart.css';

interface Moment {
  readonly at: number;
  readonly isProvisional: boolean;
  readonly temperature: number | null;
}

export function CourseTable<Point extends Moment>({
  points,
  titles,
  cells,
}: {
  readonly points: readonly Point[];
  /** Of the columns between the day and the temperature. */
  readonly titles: readonly string[];
  /** The cells of those columns. */
  readonly cells: (point: Point) => ComponentChildren;
}) {
  return (
    // A table wider than the screen is scrolled by itself, also with the keyboard.
    <section class="table-scroll" tabindex={0} aria-label={historyWords.table}>
      <table class="course">
        <thead>
          <tr>
            {[historyWords.day, ...titles, historyWords.temperature].map((title) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...points].reverse().map((point) => (
            <tr key={point.at}>
              <th scope="row">
                {dayWords(point.at)}
                {point.isProvisional && <small>{historyWords.provisional}</small>}
              </th>
              {cells(point)}
              <td>{point.temperature === null ? '' : degreesAlone(point.temperature)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A value with its error, or an empty cell. */
export function ValueCell({ value }: { readonly value: HistoryValue | null }) {
  if (!value) return <td />;
  return (
    <td>
      {signedTenths(value.cents)}
      <small>± {tenthsUp(value.sigmaCents)}</small>
    </td>
  );
}

const degreesAlone = (celsius: number): string => String(celsius).replace('-', '−');
