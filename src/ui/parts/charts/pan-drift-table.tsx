import type { DriftPoint } from '../../../domain/rounds/pan-drift';
import { historyWords } from '../../words/history-words';
import { tenths } from '../../words/words';
import { CourseTable, ValueCell } from './course-table';

const titles = [historyWords.panPitch, historyWords.unevenness];

/** The values of a pan's charts. */
export function PanDriftTable({ points }: { readonly points: readonly DriftPoint[] }) {
  return (
    <CourseTable
      points={points}
      titles={titles}
      cells={(point) => (
        <>
          <ValueCell value={point} />
          <td>{tenths(point.unevenness)}</td>
        </>
      )}
    />
  );
}
