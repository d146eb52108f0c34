// Which pans a tuner should see first on a day of so many hours, and which pans of a section disagree; to print.

import { useEffect, useState } from 'preact/hooks';
import { sectionsOf } from '../../../domain/rack/section-blend';
import { type PlannedPan, usualHoursOfPan, visitPlan } from '../../../domain/rack/visit-plan';
import { TextField, typedNumber } from '../../parts/controls/form-fields';
import { rowWords } from '../../words/list-words';
import '../../parts/drawing/note-rows.css';
import '../../parts/sheet/paper.css';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { SectionBlend } from '../../parts/rack/section-blend';
import { dayWords } from '../../words/day-words';
import { familyTitle } from '../../words/family-words';
import { severalWords } from '../../words/finder-words';
import { needWords, rackWords, storeTroubleWords } from '../../words/rack-words';
import { visitWords } from '../../words/tuner/visit-words';
import { words } from '../../words/words';
import './visit-screen.css';

type Models = Needs<'rack' | 'now' | 'printer' | 'settings' | 'blend'>;

/** A working day, so that the page says something before anybody types. */
const usualHours = '6';
const mostHours = 100;

export function VisitScreen({ models }: { readonly models: Models }) {
  const { rack, now, printer } = models;
  useEffect(() => void rack.load(), [rack]);
  const [hours, setHours] = useState(usualHours);
  const [hoursOfPan, setHoursOfPan] = useState(String(usualHoursOfPan));
  const time = { hours: typedHours(hours), hoursOfPan: typedHours(hoursOfPan) };
  const state = rack.state.value;
  const cards = rack.onRack.value;
  return (
    <main class="screen with-paper visit-page">
      <header class="top">
        <h1>{visitWords.title}</h1>
        <span>{rackWords.pansKept(cards.length)}</span>
      </header>
      <p>{visitWords.why}</p>
      {state.kind === 'trouble' && <p class="hint warn">{storeTroubleWords[state.trouble]}</p>}
      {state.kind === 'loading' && <p class="hint">{rackWords.reading}</p>}
      {cards.length === 0 && state.kind === 'open' && (
        <div class="hint">
          <p>{visitWords.empty}</p>
          <a class="button" href={addressOf('add-pan')}>
            {visitWords.addPan}
          </a>
        </div>
      )}
      {cards.length > 0 && (
        <>
          <form class="form" onSubmit={(event) => event.preventDefault()}>
            <TextField
              id="visit-hours"
              label={visitWords.hours}
              value={hours}
              inputMode="decimal"
              isBad={time.hours === null}
              hint={time.hours === null ? visitWords.hoursBad : null}
              onInput={setHours}
            />
            <TextField
              id="visit-hours-of-pan"
              label={visitWords.hoursOfPan}
              value={hoursOfPan}
              inputMode="decimal"
              isBad={time.hoursOfPan === null}
              hint={time.hoursOfPan === null ? visitWords.hoursBad : null}
              onInput={setHoursOfPan}
            />
          </form>
          <a class="button" href={addressOf('several')}>
            {severalWords.title}
          </a>
          <button type="button" class="main" onClick={() => printer.print()}>
            {visitWords.print}
          </button>
          <div class="paper visit-paper">
            <h2 class="only-paper">
              {visitWords.title}, {visitWords.made(dayWords(now()))}
            </h2>
            {time.hours !== null && time.hoursOfPan !== null && (
              <Plan
                rack={rack}
                now={now}
                time={{ hours: time.hours, hoursOfPan: time.hoursOfPan }}
              />
            )}
            <SectionBlend
              model={models.blend}
              sections={sectionsOf(cards, models.settings.a4.value)}
            />
            <p class="quiet">{visitWords.noRules}</p>
          </div>
        </>
      )}
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.rack}
        </a>
      </footer>
    </main>
  );
}

function typedHours(text: string): number | null {
  const typed = typedNumber(text);
  return typed !== null && typed > 0 && typed <= mostHours ? typed : null;
}

function Plan({
  rack,
  now,
  time,
}: Pick<Models, 'rack' | 'now'> & {
  readonly time: { readonly hours: number; readonly hoursOfPan: number };
}) {
  const { inTime, later, fine } = visitPlan(rack.onRack.value, time, now());
  const hasNeed = inTime.length + later.length > 0;
  return (
    <>
      <p>
        <b>{hasNeed ? visitWords.inTime(inTime.length) : visitWords.nobody}</b>
      </p>
      <Pans pans={inTime} />
      {later.length > 0 && (
        <>
          <h2>{visitWords.later}</h2>
          <Pans pans={later} start={inTime.length + 1} />
        </>
      )}
      {fine.length > 0 && (
        <>
          <h2>{visitWords.fine}</h2>
          <p>{rowWords(fine.map(({ name }) => name))}</p>
        </>
      )}
    </>
  );
}

function Pans({
  pans,
  start = 1,
}: {
  readonly pans: readonly PlannedPan[];
  readonly start?: number;
}) {
  if (pans.length === 0) return null;
  return (
    <ol class="visit-pans" start={start}>
      {pans.map(({ card, reasons }) => (
        <li key={card.pan} data-pan={card.pan}>
          <a href={addressOf({ screen: 'pan', pan: card.pan })}>{card.name}</a>
          <span class="aside">
            {[card.layoutName || familyTitle(card.family), card.owner]
              .filter((part) => part !== '')
              .join(' · ')}
          </span>
          <span>{reasons.map(needWords).join('; ')}</span>
        </li>
      ))}
    </ol>
  );
}
