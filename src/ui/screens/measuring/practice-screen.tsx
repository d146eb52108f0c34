// The practice pan: strike its notes by tapping, read them like those of a real one.
import { useLayoutEffect, useState } from 'preact/hooks';
import type { PracticeSource } from '../../../domain/ports/sound-ports';
import type { Reading } from '../../../domain/reading/reading';
import { tolerancesAt } from '../../../domain/tuning/tolerances';
import { verdictOn } from '../../../domain/tuning/verdict';
import { readingOf } from '../../../state/listening/readout-phase';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { PanDrawing } from '../../parts/drawing/pan-drawing';
import { LoadFailed } from '../../parts/gates/load-failed';
import { FarListen } from '../../parts/listen/listen-late';
import { Readout } from '../../parts/listen/readout';
import { ReadoutDetails } from '../../parts/listen/readout-details';
import { practiceWords } from '../../words/measuring/practice-words';
import { words } from '../../words/words';

type Models = Needs<'listen' | 'settings' | 'practicePan'>;

export function PracticeScreen({ models }: { readonly models: Models }) {
  const { listen, settings, practicePan } = models;
  const good = tolerancesAt(settings.limits.value, 'good');
  const [source, setSource] = useState<PracticeSource | null>(null);
  const [isMissing, setIsMissing] = useState(false);
  const [isFar, setFar] = useState(false);
  useLayoutEffect(() => {
    let gone = false;
    practicePan().then(
      async (pan) => {
        if (gone) return;
        await listen.beginPractice(pan);
        setSource(pan);
      },
      () => setIsMissing(true),
    );
    return () => {
      gone = true;
      void listen.stop();
    };
  }, [practicePan, listen]);
  if (isMissing) return <LoadFailed />;
  const reading = readingOf(listen.phase.value);
  const shown = {
    phase: listen.phase.value,
    expected: listen.expected.value,
    verdictOf: (reading: Reading) => verdictOn(reading, good),
  };
  if (isFar) return <FarListen {...shown} onLeave={() => setFar(false)} />;
  return (
    <main class="screen practice">
      {/* Once a note is known its name takes this place: the whole pan must stay on a small screen. */}
      <header class={reading ? 'only-spoken' : 'top'}>
        <h1>{words.practice}</h1>
        <span>{words.practiceHint}</span>
      </header>
      <Readout {...shown} onName={listen.expect} short />
      {source && (
        <PanDrawing
          layout={source.layout}
          label={words.practiceNote}
          chosen={reading?.note ?? null}
          onNote={(note) => listen.strikePractice(source, note)}
        />
      )}
      <ReadoutDetails phase={listen.phase.value} />
      <footer class="actions at-the-end">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
        <button type="button" onClick={() => setFar(true)}>
          {words.far}
        </button>
        {listen.last.value && (
          <a class="button" href={addressOf('inside')}>
            {words.lookInside}
          </a>
        )}
        <a class="button" href={addressOf('practice-bench')}>
          {practiceWords.link}
        </a>
      </footer>
    </main>
  );
}
