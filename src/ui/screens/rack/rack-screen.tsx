// The first screen: what can be done now, and all pans, the one that needs the tuner most first.
import { useLayoutEffect } from 'preact/hooks';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { FileButton } from '../../parts/controls/file-button';
import { LatePart } from '../../parts/gates/late-part';
import { PanRows } from '../../parts/rack/pan-rows';
import { reminderWords } from '../../words/keeping/backup-reminder-words';
import { clockDoubtWords, rackWords, storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';
import './rack-screen.css';

type Models = Needs<'listen' | 'rack' | 'arrival' | 'settings' | 'offline' | 'isUnsaved' | 'now'>;

/** What the rack is kept in order with: above the pans, however many there are. */
const tools = [
  ['add-pan', rackWords.addPan],
  ['visit', rackWords.visit],
  ['backup', rackWords.backUp],
  ['settings', words.settings],
] as const;

/** With so few pans there is nothing to search. */
const fewPans = 5;

export function RackScreen({ models }: { readonly models: Models }) {
  const { listen, rack } = models;
  // Before the first paint, which then shows the pans already.
  useLayoutEffect(() => void rack.load(), [rack]);
  const count = rack.count.value;
  return (
    <main class="screen rack">
      <header class="top">
        <h1>{words.rack}</h1>
        <span>{count === 0 ? words.rackAside : rackWords.pansKept(count)}</span>
      </header>
      {count === 0 && <p>{rackWords.first}</p>}
      <a
        class="button main listen"
        href={addressOf('listen')}
        onClick={() => {
          void listen.listen();
        }}
      >
        {words.listen}
      </a>
      <div class="pair">
        <a class="button" href={addressOf('practice')}>
          {words.practice}
        </a>
        <a class="button" href={addressOf('dropped')}>
          {rackWords.dropped}
        </a>
      </div>
      <nav class="tools">
        {tools.map(([screen, name]) => (
          <a key={screen} class="button" href={addressOf(screen)}>
            {name}
          </a>
        ))}
      </nav>
      {models.arrival.waiting.value && (
        <a class="hint hint-link" href={addressOf('receive')}>
          {rackWords.fileWaits(models.arrival.waiting.value.name.slice(0, 80))}
        </a>
      )}
      {models.isUnsaved.value && <p class="hint warn">{rackWords.notSaved}</p>}
      {rack.lost.value && <LatePart load={loadLost} props={{ rack }} />}
      <Pans rack={rack} now={models.now} />
      <Removed rack={rack} now={models.now} />
      {rack.clockDoubt.value && (
        <p class="hint warn">{clockDoubtWords(rack.clockDoubt.value, models.now())}</p>
      )}
      {rack.reminder.value && (
        <p class="hint" role="status">
          {reminderWords(rack.reminder.value)}
        </p>
      )}
      <FileButton
        onFile={(file) => {
          window.location.hash = addressOf('listen');
          void listen.openFile(file);
        }}
      />
      <a class="caution" href={addressOf('cautions')}>
        {words.cautionLink}
      </a>
      {models.settings.isNotKept.value && <p class="hint warn">{words.notKept}</p>}
      <OfflineLine listen={listen} offline={models.offline} />
    </main>
  );
}

function Pans({ rack, now }: Pick<Models, 'rack' | 'now'>) {
  const state = rack.state.value;
  switch (state.kind) {
    case 'missing':
    case 'loading':
      return <p class="hint">{rackWords.reading}</p>;
    case 'trouble':
      return (
        <div class="hint warn" role="alert">
          <p>{storeTroubleWords[state.trouble]}</p>
          <button type="button" onClick={() => void rack.load()}>
            {rackWords.tryAgain}
          </button>
        </div>
      );
    case 'open':
      break;
  }
  if (rack.count.value === 0) return <p class="hint">{rackWords.empty}</p>;
  const shown = rack.shown.value;
  return (
    <section
      aria-label={rackWords.pansKept(rack.count.value)}
      aria-busy={rack.isChecked.value ? undefined : 'true'}
    >
      {rack.count.value > fewPans && (
        <div class="finder-room">
          <LatePart load={loadFinder} props={{ rack }} />
        </div>
      )}
      {shown.length === 0 && <p class="hint">{rackWords.noMatch}</p>}
      <PanRows cards={shown} now={now()} isFirst={!rack.isChecked.value} />
    </section>
  );
}

/** What finds a pan comes after the pans: nobody searches in the first moment. Its room is kept. */
const loadLost = () => import('../../parts/gates/rack-lost').then((file) => file.RackLost);
const loadFinder = () => import('../../parts/rack/pan-finder').then((file) => file.PanFinder);

/** Off the rack, not gone: each leads to its page, where it can be put back. */
function Removed({ rack, now }: Pick<Models, 'rack' | 'now'>) {
  const removed = rack.removed.value;
  if (removed.length === 0) return null;
  return (
    <details class="how-sure">
      <summary>{rackWords.removed(removed.length)}</summary>
      <PanRows cards={removed} now={now()} />
    </details>
  );
}

function OfflineLine({ listen, offline }: Pick<Models, 'listen' | 'offline'>) {
  const state = offline.state.value;
  return (
    <>
      <p class="offline" role="status" data-offline={state.kind}>
        {words.offline[state.kind]}
      </p>
      {'wrongAnswer' in state && state.wrongAnswer && (
        <p class="hint warn" role="status" data-network="wrong">
          {words.wrongAnswer}
        </p>
      )}
      {state.kind === 'update-waiting' &&
        (listen.isBusy.value ? (
          <p class="hint">{words.updateLater}</p>
        ) : (
          <>
            {state.isMeasured && (
              <p class="hint" role="status">
                {words.updateLater}
              </p>
            )}
            <button type="button" onClick={offline.apply}>
              {words.updateNow}
            </button>
          </>
        ))}
    </>
  );
}
