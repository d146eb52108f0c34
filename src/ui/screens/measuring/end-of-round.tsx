// The end of a round under way: what is missing is said, and asked about, before it ends.
import { useState } from 'preact/hooks';
import type { MicrophoneState } from '../../../domain/ports/microphone-ports';
import { notesLeft } from '../../../domain/rounds/round-progress';
import type { ListenModel } from '../../../state/listening/listen-model';
import type { OpenRound } from '../../../state/round/open-round';
import type { RoundModel } from '../../../state/round/round-model';
import { addressOf } from '../../frame/route';
import { handsWords } from '../../words/measuring/hands-words';
import { missingWords, roundEndWords } from '../../words/measuring/round-end-words';
import { panWords } from '../../words/pan-words';

const isOpen = ({ kind }: MicrophoneState): boolean =>
  kind === 'listening' || kind === 'priming' || kind === 'asking';

export function EndOfRound({
  model,
  listen,
  round,
  onFar,
}: {
  readonly model: Pick<RoundModel, 'finish' | 'listen'>;
  readonly listen: Pick<ListenModel, 'microphone'>;
  readonly round: OpenRound;
  /** Shows the readout alone. */
  readonly onFar: () => void;
}) {
  const [isAsking, ask] = useState(false);
  const left = notesLeft(round.kept);
  if (isAsking && left.length > 0) {
    return (
      <footer class="actions">
        <p class="hint warn" role="alert">
          {missingWords(left, round.kept.order.length)}
        </p>
        <button type="button" onClick={model.finish}>
          {roundEndWords.finishAnyway}
        </button>
        {/* It has the focus: a second tap in the same place, or Enter, ends nothing. */}
        <button type="button" class="main" ref={focused} onClick={() => ask(false)}>
          {roundEndWords.goOn}
        </button>
      </footer>
    );
  }
  return (
    <footer class="actions">
      {left.length === 0 && (
        <p class="hint" role="status">
          {roundEndWords.allHeard}
        </p>
      )}
      <a class="button" href={addressOf({ screen: 'pan', pan: round.start.pan })}>
        {panWords.leave}
      </a>
      <button type="button" onClick={onFar}>
        {handsWords.far}
      </button>
      {isOpen(listen.microphone.value) ? (
        <button
          type="button"
          class={left.length > 0 ? '' : 'main'}
          onClick={() => (left.length > 0 ? ask(true) : model.finish())}
        >
          {panWords.endRound}
        </button>
      ) : (
        <button type="button" class="main" onClick={() => void model.listen()}>
          {panWords.listenAgain}
        </button>
      )}
    </footer>
  );
}

const focused = (element: HTMLButtonElement | null): void => element?.focus();
