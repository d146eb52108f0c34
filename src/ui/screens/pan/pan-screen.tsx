// A pan's page: how it stands at a glance, and what can be done with it.

import { useMemo } from 'preact/hooks';
import { type RoundStart, roundOf } from '../../../domain/records/rack-records';
import { standingStopgaps } from '../../../domain/records/standing/standing-stopgaps';
import { type PanNow, resultNow } from '../../../domain/rounds/pan-now';
import { isUnsettled } from '../../../domain/rounds/round-result';
import { displayName } from '../../../domain/tuning/note-names';
import { panAtAGlance } from '../../../state/pan/pan-at-a-glance';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf, type PanScreenName } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { WorkPlanList } from '../../parts/bench/work-plan-list';
import { NoteRows } from '../../parts/drawing/note-rows';
import { StandingMap } from '../../parts/drawing/standing-map';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { PanAbout } from '../../parts/pan/pan-about';
import { QuickRound } from '../../parts/pan/quick-round';
import { Headline, PanPitchLine } from '../../parts/result/pan-pitch';
import { knockWords } from '../../words/fall/knock-words';
import { tonightWords } from '../../words/fall/tonight-words';
import { undoWords } from '../../words/keeping/undo-words';
import { noteListWords } from '../../words/list-words';
import { workWords } from '../../words/now-words';
import { panPageWords, panWords } from '../../words/pan-words';
import { agoWords, rackWords } from '../../words/rack-words';
import { conditionWords, headlineWords, resultWords } from '../../words/result-words';
import { tunedWords } from '../../words/tuner/tuned-words';
import { words } from '../../words/words';
import './pan-screen.css';

type Models = Needs<'pan' | 'round' | 'settings' | 'now'>;

const shownWorst = 3;

export function PanScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Page models={models} pan={pan} />}</PanGate>;
}

function Page({ models, pan }: { readonly models: Models; readonly pan: OpenPan }) {
  const { fields, conflicts } = pan.current;
  const stopgaps = [...standingStopgaps(pan.records).keys()].sort((low, high) => low - high);
  const judging = models.settings.judging.value;
  const glance = useMemo(() => panAtAGlance(pan, judging), [pan, judging]);
  // To the note in most need, or the first one; the bench leads on to the others.
  const benched = glance.worst[0]?.note ?? glance.notes[0]?.note;
  const newest = pan.rounds[0] && roundOf(pan.rounds[0]);
  const to = (screen: PanScreenName) => addressOf({ screen, pan: pan.id });
  return (
    <main class="screen pan-page" data-pan={pan.id}>
      <header class="top">
        <h1>{rackWords.nameOf(fields.name)}</h1>
        <span>{fields.layout.name}</span>
      </header>
      {/* Before the notes in the order of stops; `order` puts it at the end to the eye. */}
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.rack}
        </a>
        {pan.openRound ? (
          <GoOn pan={pan} round={pan.openRound} />
        ) : (
          <>
            <QuickRound round={models.round} pan={pan} />
            <a class="button main" href={to('begin')}>
              {panWords.startRound}
            </a>
          </>
        )}
      </footer>
      {fields.isRemoved && (
        <div class="hint warn">
          <p>{panWords.removedPan}</p>
          <button type="button" onClick={() => void models.pan.save({ isRemoved: false })}>
            {panWords.putBack}
          </button>
        </div>
      )}
      {conflicts.length > 0 && (
        <a class="hint warn hint-link" href={to('details')}>
          {panPageWords.conflicts}
        </a>
      )}
      {pan.openRound && <p class="hint">{panWords.leftOpen}</p>}
      {stopgaps.length > 0 && (
        <a class="hint warn hint-link" href={to('tonight')}>
          {tonightWords.magnetReminder(noteListWords(stopgaps))}
        </a>
      )}
      <NotKept keeper={models.pan} />
      <StandingMap
        pan={pan.id}
        layout={fields.layout}
        notes={new Map(glance.notes.map((each) => [each.note, each]))}
        standings={glance.standings}
      />
      <Standing settings={models.settings} now={models.now} pan={pan} glance={glance} />
      <div class="pair">
        {glance.base && (
          <a
            class="button"
            href={addressOf({ screen: 'result', pan: pan.id, round: newest ?? glance.base.round })}
          >
            {panWords.result}
          </a>
        )}
        {pan.rounds.length > 0 && (
          <a class="button" href={to('history')}>
            {panWords.history}
          </a>
        )}
        <a class="button" href={to('sheet')}>
          {panPageWords.sheet}
        </a>
        <a class="button" href={to('answers')}>
          {panPageWords.answers}
        </a>
        <a class="button" href={to('tuned')}>
          {tunedWords.title}
        </a>
        <a class="button" href={to('details')}>
          {panWords.details}
        </a>
        <a class="button" href={to('layout')}>
          {panWords.layout}
        </a>
        <a class="button" href={to('send')}>
          {panWords.send}
        </a>
        <a class="button" href={to('taken-out')}>
          {undoWords.title}
        </a>
      </div>
      <div class="pair">
        {benched !== undefined && (
          <a class="button" href={addressOf({ screen: 'bench', pan: pan.id, note: benched })}>
            {words.workOn(displayName(benched))}
          </a>
        )}
        <a class="button" href={to('knock')}>
          {knockWords.link}
        </a>
        <a class="button" href={to('tonight')}>
          {tonightWords.link}
        </a>
      </div>
      <PanAbout pan={pan} />
    </main>
  );
}

function Standing({
  settings,
  now,
  pan,
  glance,
}: Pick<Models, 'settings' | 'now'> & {
  readonly pan: OpenPan;
  readonly glance: PanNow;
}) {
  const result = resultNow(glance);
  const work = workWords(glance).map((each) => (
    <p key={each} class="hint">
      {each}
    </p>
  ));
  if (!result)
    return pan.openRound ? <div class="rows">{work}</div> : <p class="hint">{panWords.noRound}</p>;
  return (
    <section class="rows" aria-label={panWords.result}>
      <Headline {...headlineWords(glance.standings)} />
      <p class="quiet">
        {panWords.lastRound(agoWords(result.at, now()))}{' '}
        {isUnsettled(result.conditions) && (
          <b>
            {resultWords.provisional} {conditionWords(result.conditions)}
          </b>
        )}
      </p>
      {work}
      <PanPitchLine result={result} />
      <NoteRows pan={pan.id} notes={result.worst.slice(0, shownWorst)} />
      <WorkPlanList settings={settings} pan={pan} result={result} />
    </section>
  );
}

/** Going on with a round that was interrupted, or leaving it and starting anew. */
function GoOn({ pan, round }: { readonly pan: OpenPan; readonly round: RoundStart }) {
  return (
    <>
      <a class="button" href={addressOf({ screen: 'begin', pan: pan.id })}>
        {panPageWords.startAnother}
      </a>
      <a
        class="button main"
        href={addressOf({ screen: 'round', pan: pan.id, round: roundOf(round) })}
      >
        {panWords.resumeRound}
      </a>
    </>
  );
}
