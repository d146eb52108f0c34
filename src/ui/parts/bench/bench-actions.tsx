// The bar below the bench: what comes next, and the way back or to silence.
import type { ComponentChildren } from 'preact';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { BenchModel } from '../../../state/bench/bench-model';
import type { MainAction } from '../../../state/bench/main-action';
import { noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import { addressOf } from '../../frame/route';
import { adviceWords } from '../../words/measuring/advice-words';
import { benchWords } from '../../words/measuring/bench-words';
import { handsWords } from '../../words/measuring/hands-words';
import { words } from '../../words/words';
import { follow, nextWords } from './bench-moves-row';

/** What a simulated note needs in place of microphone and hammer. */
export interface SimulatedBench {
  readonly title: string;
  readonly hammer: ComponentChildren;
  readonly strike: (note: MidiNote) => void;
  readonly strikeWords: (note: string) => string;
  readonly leave: () => void;
  readonly leaveWords: string;
}

type BarModel = Pick<
  BenchModel,
  'isHearing' | 'main' | 'listen' | 'next' | 'check' | 'log' | 'stop'
>;

export function BenchActions({
  model,
  bench,
  simulated,
}: {
  readonly model: BarModel;
  readonly bench: OpenBench;
  readonly simulated: SimulatedBench | null;
}) {
  const { course, check, subject } = bench;
  return (
    <footer class="actions">
      {check ? (
        <button type="button" onClick={() => model.check(null)}>
          {benchWords.nextBack(displayName(course.note))}
        </button>
      ) : simulated ? (
        <button type="button" onClick={simulated.leave}>
          {simulated.leaveWords}
        </button>
      ) : model.isHearing.value ? (
        <button type="button" onClick={model.stop}>
          {handsWords.stop}
        </button>
      ) : (
        <a
          class="button"
          href={addressOf(subject.kind === 'pan' ? { screen: 'pan', pan: subject.pan } : 'listen')}
        >
          {words.back}
        </a>
      )}
      {simulated ? (
        <button type="button" class="main" onClick={() => simulated.strike(noteHeard(bench))}>
          {simulated.strikeWords(displayName(noteHeard(bench)))}
        </button>
      ) : (
        <MainButton model={model} bench={bench} action={model.main.value} />
      )}
    </footer>
  );
}

function MainButton({
  model,
  bench,
  action,
}: {
  readonly model: BarModel;
  readonly bench: OpenBench;
  readonly action: MainAction;
}) {
  switch (action.kind) {
    case 'strike':
      // No button: nothing is to be touched.
      return <p class="main-next">{handsWords.strike(displayName(action.note))}</p>;
    case 'listen':
      return <Main text={benchWords.listen} onPress={() => void model.listen()} />;
    case 'as-suggested':
      return <Main text={adviceWords.asSuggested} onPress={() => model.log(action.blows)} />;
    case 'say-where':
      return <Main text={handsWords.sayWhere} onPress={showLog} />;
    case 'move':
      return (
        <Main text={nextWords(action.move, bench)} onPress={() => follow(model.next(), bench)} />
      );
  }
}

const Main = ({ text, onPress }: { readonly text: string; readonly onPress: () => void }) => (
  <button type="button" class="main" onClick={onPress}>
    {text}
  </button>
);

/** The places lie below what is always in sight. */
const showLog = (): void => document.querySelector('.blow-log')?.scrollIntoView({ block: 'start' });
