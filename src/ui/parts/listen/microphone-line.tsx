// What the microphone does, and what is wrong with it or with the measuring part.
import type { ListenModel } from '../../../state/listening/listen-model';
import { microphoneWords, processingWords, words } from '../../words/words';

export function MicrophoneLine({
  listen,
}: {
  readonly listen: Pick<ListenModel, 'microphone' | 'ear'>;
}) {
  const microphone = listen.microphone.value;
  const isRunning = microphone.kind === 'listening' || microphone.kind === 'priming';
  return (
    <>
      {listen.ear.value.kind === 'failed' && (
        <p class="hint warn" role="alert">
          {words.earFailed}
        </p>
      )}
      <p class={`hint ${isRunning ? '' : 'warn'}`} role="status" data-microphone={microphone.kind}>
        {microphoneWords(microphone).sentence}
      </p>
      {microphone.kind === 'listening' && microphone.processing.length > 0 && (
        <p class="hint warn">{processingWords(microphone.processing)}</p>
      )}
    </>
  );
}
