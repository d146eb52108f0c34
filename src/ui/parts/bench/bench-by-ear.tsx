// What helps the ear at the bench: the newest strike from inside, and the tones the note should have.
import { wishOf } from '../../../domain/reading/judge-note';
import { shiftedBy } from '../../../domain/tuning/units';
import type { BenchModel } from '../../../state/bench/bench-model';
import { noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import type { TargetTone } from '../../../state/listening/target-tone';
import { addressOf } from '../../frame/route';
import { words } from '../../words/words';
import { TargetToneButtons } from '../listen/target-tone-buttons';

export function BenchByEar({
  model,
  bench,
  tone,
}: {
  readonly model: BenchModel;
  readonly bench: OpenBench;
  readonly tone: TargetTone;
}) {
  const note = noteHeard(bench);
  const { layout, a4, reference } = bench.around;
  return (
    <>
      {model.newest.value && (
        <a class="button" href={addressOf('inside')} onClick={model.lookInside}>
          {words.lookInside}
        </a>
      )}
      <TargetToneButtons
        tone={tone}
        note={note}
        wish={layout === null ? {} : wishOf(layout, note)}
        bandA4={a4}
        panA4={reference === 0 ? null : shiftedBy(a4, reference)}
      />
    </>
  );
}
