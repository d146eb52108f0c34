// The values of a pan's charts as a table, the newest first.
import type { DriftPoint } from '../../domain/work/pan-drift';
import { tenths } from '../words';
import { dayWords } from '../words/day-words';
import { historyWords } from '../words/history-words';
import { degreesAlone, Value } from './note-course-table';

export function PanDriftTable({ points }: { readonly points: readonly DriftPoint[] }) {
  return (
    <section class="table-scroll" tabindex={0} aria-label={historyWords.table}>
      <table class="course">
        <thead>
          <tr>
            <th scope="col">{historyWords.day}</th>
            <th scope="col">{historyWords.panPitch}</th>
            <th scope="col">{historyWords.unevenness}</th>
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
              <Value value={point} />
              <td>{tenths(point.unevenness)}</td>
              <td>{point.temperature === null ? '' : degreesAlone(point.temperature)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
