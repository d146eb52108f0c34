// What persons marked about a note, newest first: each mark with its day, also those taken back.
import type { PanRecords } from '../../../domain/records/rack-records';
import { olderFirst } from '../../../domain/records/record-order';
import { withoutErased } from '../../../domain/records/standing/without-erased';
import type { MidiNote } from '../../../domain/tuning/units';
import { dayWords } from '../../words/day-words';
import { historyWords } from '../../words/history-words';
import { panWords } from '../../words/pan-words';
import '../drawing/note-rows.css';

export function NoteMarks({
  records,
  note,
}: {
  readonly records: PanRecords;
  readonly note: MidiNote;
}) {
  const marks = withoutErased(records)
    .marks.filter((mark) => mark.note === note)
    .sort((one, other) => olderFirst(other, one));
  if (marks.length === 0) return null;
  return (
    <section aria-label={historyWords.marks}>
      <ul class="plain-rows">
        {marks.map(({ id, mark, at }) => (
          <li key={id}>
            {mark === 'none'
              ? historyWords.unmarkedOn(dayWords(at))
              : historyWords.markedOn(panWords.marked[mark], dayWords(at))}
          </li>
        ))}
      </ul>
    </section>
  );
}
