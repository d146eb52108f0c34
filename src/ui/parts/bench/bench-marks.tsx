// What is wrong with the note on the bench that no strike can tell.
import type { MarkKind } from '../../../domain/records/rack-records';
import type { OpenBench } from '../../../state/bench/open-bench';
import type { PanScreenModels } from '../../frame/app-models';
import { benchWords } from '../../words/measuring/bench-words';
import { MarkButtons } from '../controls/mark-buttons';

const markable: readonly MarkKind[] = ['dead', 'buzzing', 'cracked'];

export function BenchMarks({
  models,
  bench,
}: {
  readonly models: PanScreenModels;
  readonly bench: OpenBench;
}) {
  const mark = bench.around.marks.get(bench.course.note) ?? 'none';
  return (
    <>
      <details class="how-sure">
        <summary>{benchWords.mark}</summary>
        <MarkButtons kinds={markable} mark={mark} onMark={models.bench.mark} />
      </details>
      {mark === 'cracked' && <p class="hint warn">{benchWords.crackedCaution}</p>}
    </>
  );
}
