// Practising with a hammer: a pan of a chosen level, the bench for its notes, and in the end what it came to.
import { useLayoutEffect, useState } from 'preact/hooks';
import { type PracticeLevel, practiceLevels } from '../../../domain/ports/practice-port';
import type { Reading } from '../../../domain/reading/reading';
import { displayName } from '../../../domain/tuning/note-names';
import { tolerancesAt } from '../../../domain/tuning/tolerances';
import type { MidiNote } from '../../../domain/tuning/units';
import { verdictOn } from '../../../domain/tuning/verdict';
import type { PracticeBenchView } from '../../../state/bench/practice-bench-model';
import { readingOf } from '../../../state/listening/readout-phase';
import { addressOf } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { Bench } from '../../parts/bench/bench';
import { PracticeHammer } from '../../parts/bench/practice-hammer';
import { PracticeResult } from '../../parts/bench/practice-result';
import { PanDrawing } from '../../parts/drawing/pan-drawing';
import { Instead } from '../../parts/gates/instead';
import { LoadFailed } from '../../parts/gates/load-failed';
import { FarListen } from '../../parts/listen/listen-late';
import { Readout } from '../../parts/listen/readout';
import { practiceWords } from '../../words/measuring/practice-words';
import { words } from '../../words/words';

type Models = Needs<'practiceBench' | 'bench' | 'settings' | 'listen' | 'announcer' | 'headset'>;

type PanView = Extract<PracticeBenchView, { readonly kind: 'pan' }>;

export function PracticeBenchScreen({ models }: ScreenProps<Models>) {
  const { practiceBench: model, bench } = models;
  useLayoutEffect(
    () => () => {
      bench.leave();
      model.leave();
    },
    [model, bench],
  );
  const view = model.view.value;
  switch (view.kind) {
    case 'levels':
      return <Levels onChoose={(level) => void model.begin(level)} />;
    case 'loading':
      return <Instead text={practiceWords.loading} tone="hint" />;
    case 'failed':
      return <LoadFailed />;
    case 'pan':
      return <Pan models={models} view={view} />;
    case 'over':
      return <PracticeResult view={view} onAgain={model.leave} />;
  }
}

function Levels({ onChoose }: { readonly onChoose: (level: PracticeLevel) => void }) {
  return (
    <main class="screen">
      <header class="top">
        <h1>{practiceWords.title}</h1>
      </header>
      <p>{practiceWords.why}</p>
      <p class="hint">{practiceWords.realPan}</p>
      <h2>{practiceWords.level}</h2>
      {practiceLevels.map((level) => (
        <button key={level} type="button" data-level={level} onClick={() => onChoose(level)}>
          {practiceWords.levels[level]}
        </button>
      ))}
      <footer class="actions at-the-end">
        <a class="button" href={addressOf('practice')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}

/** The whole pan to be struck; or one note of it on the bench. */
function Pan({ models, view }: { readonly models: Models; readonly view: PanView }) {
  const { practiceBench: model, bench, listen, settings } = models;
  const [benched, setBenched] = useState<MidiNote | null>(null);
  const [isFar, setFar] = useState(false);
  const opened = bench.view.value;
  const putOnBench = async (note: MidiNote): Promise<void> => {
    await bench.open({ kind: 'practice', source: view.source, note });
    setBenched(note);
    await bench.listen();
  };
  if (benched !== null && opened.kind === 'open') {
    return (
      <Bench
        model={bench}
        settings={settings}
        listen={listen}
        announcer={models.announcer}
        headset={models.headset}
        bench={opened.bench}
        simulated={{
          title: practiceWords.simulated,
          hammer: <PracticeHammer model={bench} practice={model} bench={opened.bench} />,
          strike: model.strike,
          strikeWords: words.practiceNote,
          leave: () => {
            bench.leave();
            setBenched(null);
            void model.hearPan();
          },
          leaveWords: practiceWords.backToPan,
        }}
      />
    );
  }
  const phase = listen.phase.value;
  const reading = readingOf(phase);
  const good = tolerancesAt(settings.limits.value, 'good');
  const shown = {
    phase,
    expected: listen.expected.value,
    verdictOf: (reading: Reading) => verdictOn(reading, good),
  };
  if (isFar) return <FarListen {...shown} onLeave={() => setFar(false)} />;
  return (
    <main class="screen practice" data-worked={view.worked.length}>
      <header class={reading ? 'only-spoken' : 'top'}>
        <h1>{practiceWords.levels[view.level]}</h1>
        <span>{practiceWords.simulated}</span>
      </header>
      <Readout {...shown} onName={listen.expect} short />
      <PanDrawing
        layout={view.source.layout}
        label={words.practiceNote}
        chosen={reading?.note ?? null}
        onNote={model.strike}
      />
      {reading ? (
        <button type="button" class="main" onClick={() => void putOnBench(reading.note)}>
          {practiceWords.putOnBench(displayName(reading.note))}
        </button>
      ) : (
        <p class="hint">{practiceWords.find}</p>
      )}
      <footer class="actions at-the-end">
        <a class="button" href={addressOf('practice')}>
          {words.back}
        </a>
        <button type="button" onClick={() => setFar(true)}>
          {words.far}
        </button>
        <button type="button" onClick={() => void model.finish()}>
          {practiceWords.finish}
        </button>
      </footer>
    </main>
  );
}
