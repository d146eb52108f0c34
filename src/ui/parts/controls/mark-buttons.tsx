// What is wrong with a note that no strike can tell: one tap marks it, a second one takes the mark back.
import type { MarkKind } from '../../../domain/records/rack-records';
import { panWords } from '../../words/pan-words';
import './mark-buttons.css';

export function MarkButtons({
  kinds,
  mark,
  onMark,
}: {
  readonly kinds: readonly MarkKind[];
  readonly mark: MarkKind;
  readonly onMark: (mark: MarkKind) => void;
}) {
  return (
    <div class="pair marks">
      {kinds.map((kind) => (
        <button
          key={kind}
          type="button"
          aria-pressed={mark === kind}
          onClick={() => onMark(mark === kind ? 'none' : kind)}
        >
          {panWords.marks[kind]}
        </button>
      ))}
    </div>
  );
}
