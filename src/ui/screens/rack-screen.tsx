// The first screen: what can be done now, and all pans, the one that needs the tuner most first.
import { useLayoutEffect } from 'preact/hooks';
import type { PanCard } from '../../domain/records/pan-card';
import { displayName } from '../../domain/tuning/note-names';
import type { Instant } from '../../domain/tuning/units';
import type { NoteStanding } from '../../domain/work/note-standing';
import { rackOrders } from '../../domain/work/rack-order';
import { needNow } from '../../domain/work/tuner-need';
import type { AppModels } from '../app-models';
import { FileButton } from '../parts/file-button';
import { RackLost } from '../parts/rack-lost';
import { StandingMark } from '../parts/standing-mark';
import { addressOf } from '../route';
import { words } from '../words';
import { reminderWords } from '../words/backup-words';
import { agoWords, needWords, rackWords, storeTroubleWords } from '../words/rack-words';
import './rack-screen.css';
import { familyWords } from '../words/family-words';

/** With so few pans there is nothing to search. */
const fewPans = 5;

export function RackScreen({ models }: { readonly models: AppModels }) {
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
        <a class="button" href={addressOf('add-pan')}>
          {rackWords.addPan}
        </a>
        <a class="button" href={addressOf('dropped')}>
          {rackWords.dropped}
        </a>
      </div>
      {models.arrival.waiting.value && (
        <a class="hint hint-link" href={addressOf('receive')}>
          {rackWords.fileWaits(models.arrival.waiting.value.name.slice(0, 80))}
        </a>
      )}
      <RackLost rack={rack} />
      <Pans models={models} />
      <a class="button" href={addressOf('visit')}>
        {rackWords.visit}
      </a>
      <Removed models={models} />
      {rack.reminder.value && (
        <p class="hint" role="status">
          {reminderWords(rack.reminder.value)}
        </p>
      )}
      <div class="pair">
        <FileButton
          onFile={(file) => {
            window.location.hash = addressOf('listen');
            void listen.openFile(file);
          }}
        />
        <a class="button" href={addressOf('backup')}>
          {rackWords.backUp}
        </a>
      </div>
      <a class="caution" href={addressOf('cautions')}>
        {words.cautionLink}
      </a>
      <a class="button" href={addressOf('settings')}>
        {words.settings}
      </a>
      {models.settings.isNotKept.value && <p class="hint warn">{words.notKept}</p>}
      <OfflineLine models={models} />
    </main>
  );
}

function Pans({ models: { rack, now } }: { readonly models: AppModels }) {
  const state = rack.state.value;
  switch (state.kind) {
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
    case 'ready':
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
        <div class="pair">
          <label class="field">
            <span>{rackWords.search}</span>
            <input
              type="search"
              autocomplete="off"
              value={rack.search.value}
              onInput={(event) => {
                rack.search.value = event.currentTarget.value;
              }}
            />
          </label>
          <label class="field">
            <span>{rackWords.sortBy}</span>
            <select
              value={rack.order.value}
              onChange={(event) => {
                const { value } = event.currentTarget;
                rack.order.value = rackOrders.find((each) => each === value) ?? 'need';
              }}
            >
              {rackOrders.map((order) => (
                <option key={order} value={order}>
                  {rackWords.orders[order]}
                </option>
              ))}
            </select>
          </label>
        </div>
      )}
      {shown.length === 0 && <p class="hint">{rackWords.noMatch}</p>}
      <ul class="pan-list">
        {shown.map((card) => (
          <li key={card.pan}>
            <PanRow card={card} now={now()} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Off the rack, not gone: each leads to its page, where it can be put back. */
function Removed({ models: { rack, now } }: { readonly models: AppModels }) {
  const removed = rack.removed.value;
  if (removed.length === 0) return null;
  return (
    <details class="how-sure">
      <summary>{rackWords.removed(removed.length)}</summary>
      <ul class="pan-list">
        {removed.map((card) => (
          <li key={card.pan}>
            <PanRow card={card} now={now()} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function PanRow({ card, now }: { readonly card: PanCard; readonly now: Instant }) {
  const { pan, name, family, layoutName, lastRoundAt } = card;
  const when =
    lastRoundAt === null ? rackWords.noRoundYet : rackWords.round(agoWords(lastRoundAt, now));
  const asides = [
    layoutName === '' ? familyWords[family] : layoutName,
    when,
    card.isProvisional ? rackWords.provisional : '',
    card.openRound === null ? '' : rackWords.openRound,
    card.hasConflict ? rackWords.writtenTwice : '',
    card.stopgaps.length > 0 ? rackWords.magnetOn(card.stopgaps.map(displayName).join(', ')) : '',
  ].filter((each) => each !== '');
  return (
    <a class="pan-row" href={addressOf({ screen: 'pan', pan })} data-pan={pan}>
      <StandingMark standing={worstOf(card)} />
      <span>
        <b class="pan-name">{name}</b>
        <span class="aside">{asides.join(' · ')}</span>
        <span class="need">{needLine(card, now)}</span>
      </span>
    </a>
  );
}

const worstFirst: readonly NoteStanding[] = ['avoid', 'out', 'playable', 'good'];

const worstOf = ({ standings }: PanCard): NoteStanding =>
  worstFirst.find((standing) => standings[standing] > 0) ?? 'unread';

function needLine(card: PanCard, now: Instant): string {
  const { lastRoundAt, worst } = card;
  const { reasons } = needNow(card, now);
  if (reasons.length > 0) return reasons.slice(0, 2).map(needWords).join('; ');
  if (lastRoundAt === null) return rackWords.notHeardYet;
  const [first] = worst;
  return first === undefined ? rackWords.allGood : rackWords.worstIs(displayName(first));
}

function OfflineLine({ models: { listen, offline, applyUpdate } }: { readonly models: AppModels }) {
  const { kind } = offline.value;
  return (
    <>
      <p class="offline" role="status" data-offline={kind}>
        {words.offline[kind]}
      </p>
      {kind === 'update-waiting' &&
        (listen.isBusy.value ? (
          <p class="hint">{words.updateLater}</p>
        ) : (
          <button type="button" onClick={applyUpdate}>
            {words.updateNow}
          </button>
        ))}
    </>
  );
}
