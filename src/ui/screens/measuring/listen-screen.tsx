// Listening: the readout first, then what the user may say about the note, then the microphone.
import { useLayoutEffect } from 'preact/hooks';
import { displayName } from '../../../domain/tuning/note-names';
import { tolerancesAt } from '../../../domain/tuning/tolerances';
import { verdictOn } from '../../../domain/tuning/verdict';
import { readingOf } from '../../../state/listening/readout-phase';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { FileNoticeLine } from '../../parts/controls/file-button';
import { LatePart } from '../../parts/gates/late-part';
import { NotePicker } from '../../parts/listen/note-picker';
import { Readout, ReadoutDetails } from '../../parts/listen/readout';
import { microphoneWords, processingWords, words } from '../../words/words';

const loadSteps = () => import('../../parts/listen/denied-steps').then((file) => file.DeniedSteps);

export function ListenScreen({ models }: { readonly models: Needs<'listen' | 'settings'> }) {
  const { listen, settings } = models;
  const good = tolerancesAt(settings.limits.value, 'good');
  // However the screen is left (the phone's own "back" too), the microphone goes off with it: at once, for the next
  // screen may open it again.
  useLayoutEffect(
    () => () => {
      void listen.stop();
    },
    [listen],
  );
  const microphone = listen.microphone.value;
  const notice = listen.fileNotice.value;
  const text = microphoneWords(microphone);
  const benched = readingOf(listen.phase.value)?.note ?? listen.expected.value;
  const running = microphone.kind === 'listening' || microphone.kind === 'priming';
  // What needs an answer stands beside the button that answers it, never below the fold.
  const sentence = notice.kind === 'none' && (
    <p class={`hint ${running ? '' : 'warn'}`} role="status" data-microphone={microphone.kind}>
      {text.sentence}
    </p>
  );
  return (
    <main class="screen">
      <h1 class="only-spoken">{words.listen}</h1>
      <Readout
        phase={listen.phase.value}
        expected={listen.expected.value}
        onName={listen.expect}
        verdictOf={(reading) => verdictOn(reading, good)}
      />
      <ReadoutDetails phase={listen.phase.value} />
      <FileNoticeLine notice={notice} />
      {listen.ear.value.kind === 'failed' && (
        <p class="hint warn" role="alert">
          {words.earFailed}
        </p>
      )}
      {running && sentence}
      {microphone.kind === 'listening' && microphone.processing.length > 0 && (
        <p class="hint warn">{processingWords(microphone.processing)}</p>
      )}
      <NotePicker expected={listen.expected.value} onExpect={listen.expect} />
      <div class="pair">
        <button
          type="button"
          disabled={listen.octaves.value.up === null}
          onClick={() => listen.correctOctave(1)}
        >
          {words.octaveUp}
        </button>
        <button
          type="button"
          disabled={listen.octaves.value.down === null}
          onClick={() => listen.correctOctave(-1)}
        >
          {words.octaveDown}
        </button>
      </div>
      {listen.last.value && (
        <a class="button" href={addressOf('inside')}>
          {words.lookInside}
        </a>
      )}
      {benched !== null && (
        <a class="button" href={addressOf({ screen: 'bare-bench', note: benched })}>
          {words.workOn(displayName(benched))}
        </a>
      )}
      <footer class="actions">
        {!running && sentence}
        {microphone.kind === 'denied' && <LatePart load={loadSteps} props={{}} />}
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
        <button
          type="button"
          class="main"
          onClick={() => {
            void (running ? listen.stop() : listen.listen());
          }}
        >
          {text.button}
        </button>
      </footer>
    </main>
  );
}
