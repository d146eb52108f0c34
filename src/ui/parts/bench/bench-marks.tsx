// What is wrong with the note on the bench that no strike can tell.
import type { MarkKind } from '../../../domain/records/rack-records';
import type { OpenBench } from '../../../state/bench/open-bench';
import { benchWords } from '../../words/measuring/bench-words';
import { MarkButtons } from '../controls/mark-buttons';

const markable: readonly MarkKind[] = ['dead', 'buzzing', 'cracked'];

export function BenchMarks({
  bench,
  onMark,
}: {
  readonly bench: OpenBench;
  readonly onMark: (mark: MarkKind) => void;
}) {
  const mark = bench.around.marks.get(bench.course.note) ?? 'none';
  return (
    <>
      <details class="how-sure">
        <summary>{benchWords.mark}</summary>
        <MarkButtons kinds={markable} mark={mark} onMark={onMark} />
      </details>
      {mark === 'cracked' && <p class="hint warn">{benchWords.crackedCaution}</p>}
    </>
  );
}
