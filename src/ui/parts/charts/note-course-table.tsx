import type { HistoryPoint } from '../../../domain/rounds/note-history';
import { words } from '../../words/words';
import { CourseTable, ValueCell } from './course-table';

const titles = [words.fundamental, words.octave, words.thirdUnknown];

/** The values of a note's charts. */
export function NoteCourseTable({ points }: { readonly points: readonly HistoryPoint[] }) {
  return (
    <CourseTable
      points={points}
      titles={titles}
      cells={({ fundamental, octave, third }) => (
        <>
          <ValueCell value={fundamental} />
          <ValueCell value={octave} />
          <ValueCell value={third} />
        </>
      )}
    />
  );
}
