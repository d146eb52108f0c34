// The values of a note's charts as a table, the newest first.
import type { HistoryPoint, HistoryValue } from '../../domain/work/note-history';
import { tenthsUp, words } from '../words';
import { dayWords } from '../words/day-words';
import { historyWords } from '../words/history-words';
import { signedTenths } from '../words/result-words';
import './time-chart.css';

export function NoteCourseTable({ points }: { readonly points: readonly HistoryPoint[] }) {
  return (
    // A table wider than the screen is scrolled by itself, also with the keyboard.
    <section class="table-scroll" tabindex={0} aria-label={historyWords.table}>
      <table class="course">
        <thead>
          <tr>
            <th scope="col">{historyWords.day}</th>
            <th scope="col">{words.fundamental}</th>
            <th scope="col">{words.octave}</th>
            <th scope="col">{words.thirdUnknown}</th>
            <th scope="col">{historyWords.temperature}</th>
          </tr>
        </thead>
        <tbody>
          {[...points].reverse().map((point) => (
            <tr key={point.at}>
              <th scope="row">
                {dayWords(point.at)}
                {point.isProvisional && <small>{historyWords.provisional}</small>}
              </th>
              <Value value={point.fundamental} />
              <Value value={point.octave} />
              <Value value={point.third} />
              <td>{point.temperature === null ? '' : degreesAlone(point.temperature)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

export function Value({ value }: { readonly value: HistoryValue | null }) {
  if (!value) return <td />;
  return (
    <td>
      {signedTenths(value.cents)}
      <small>± {tenthsUp(value.sigmaCents)}</small>
    </td>
  );
}

export const degreesAlone = (celsius: number): string => String(celsius).replace('-', '−');
