// Look inside a strike: each partial as a line through time, and as a sound by itself.
import { useLayoutEffect, useState } from 'preact/hooks';
import type { PartInside, Slower } from '../../../domain/measurement/strike-inside';
import { displayName } from '../../../domain/tuning/note-names';
import type { InsideView } from '../../../state/listening/inside-model';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { InsideTable } from '../../parts/listen/inside-table';
import { MovingOval } from '../../parts/listen/moving-oval';
import { PartCourse } from '../../parts/listen/part-course';
import { reachOf } from '../../parts/listen/part-course-geometry';
import { insideWords, partSentence, partWords } from '../../words/measuring/inside-words';
import { words } from '../../words/words';
import './inside-screen.css';

type Models = Needs<'inside' | 'listen' | 'round' | 'bench'>;

/** Small loudspeakers play little below this, Hz (common practice, no source). */
const deepHz = 200;
const sounds = ['alone', 'target', 'both'] as const;
const speeds = [1, 2, 4] as const;

type OpenedView = Extract<InsideView, { readonly kind: 'open' }>;

export function InsideScreen({ models }: { readonly models: Models }) {
  const { inside: model } = models;
  useLayoutEffect(() => {
    void model.open();
    return model.stop;
  }, [model]);
  const view = model.view.value;
  return (
    <main class="screen inside">
      {view.kind === 'open' ? (
        <Opened models={models} view={view} />
      ) : (
        <>
          <h1>{words.lookInside}</h1>
          <p class="hint" role="status" data-inside={view.kind}>
            {insideWords[view.kind]}
          </p>
        </>
      )}
      <footer class="actions">
        {view.kind === 'open' ? (
          <button
            type="button"
            class="main"
            onClick={() => {
              window.history.back();
              if (view.from !== 'microphone') return;
              void model.listenAgain(listenerOf(models, view).listen);
            }}
          >
            {view.from === 'microphone' ? insideWords.backToListening : insideWords.back}
          </button>
        ) : (
          <a class="button main" href={addressOf('listen')}>
            {words.listen}
          </a>
        )}
      </footer>
    </main>
  );
}

/** Who had the strike, and hears on. */
const listenerOf = ({ bench, round, listen }: Models, { strike, isOnPan }: OpenedView) =>
  bench.isLookedInto(strike) ? bench : isOnPan ? round : listen;

function Opened({ models, view }: { readonly models: Models; readonly view: OpenedView }) {
  const { inside: model } = models;
  const [slower, setSlower] = useState<Slower>(1);
  const { strike, inside } = view;
  const playing = model.playing.value;
  const { parts } = inside;
  const nameOf = ({ name }: PartInside): string => partWords(name, strike.third?.kind ?? null);
  const reach = reachOf(
    parts.map(({ course }) => course),
    parts.map(({ cents }) => cents),
  );
  return (
    <>
      <header class="top">
        <h1>{insideWords.title(displayName(strike.note))}</h1>
      </header>
      <p class="hint">{insideWords.why}</p>
      {strike.isInferred && <p class="hint">{insideWords.missing}</p>}
      {parts.map((part) => (
        <section
          key={part.name}
          class="part"
          data-part={part.name}
          data-cents={part.cents.toFixed(2)}
        >
          <h2>{nameOf(part)}</h2>
          <p>{partSentence(part)}</p>
          <PartCourse part={part} reach={reach} length={inside.seconds} />
          {part.rival && <p class="hint">{insideWords.twoLines(part.cents, part.rival.cents)}</p>}
          <div class="sounds">
            {sounds.map((which) => (
              <button
                key={which}
                type="button"
                aria-label={`${nameOf(part)}: ${insideWords.sounds[which]}`}
                aria-pressed={playing?.part === part.name && playing.which === which}
                onClick={() => void model.play(part.name, which, slower)}
              >
                {insideWords.sounds[which]}
              </button>
            ))}
          </div>
          {part.measured.hz < deepHz && <p class="hint">{insideWords.deep}</p>}
        </section>
      ))}
      <MovingOval lit={playing?.part ?? null} />
      <p class="quiet" role="status">
        {playing ? insideWords.moves[playing.part] : ''}
      </p>
      <fieldset class="sounds">
        <legend>{insideWords.speed}</legend>
        {speeds.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={slower === each}
            onClick={() => setSlower(each)}
          >
            {insideWords.speeds[each]}
          </button>
        ))}
      </fieldset>
      <p class="hint">{insideWords.slowed}</p>
      <p class="hint">{insideWords.picture}</p>
      <InsideTable inside={inside} nameOf={nameOf} />
    </>
  );
}
