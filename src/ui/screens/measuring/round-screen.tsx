// A round under way: the big word for the strike, the map of what is done, one tap for what is wrong with a note.
import { useEffect, useLayoutEffect } from 'preact/hooks';
import { judgedNote, wishOf } from '../../../domain/reading/judge-note';
import { countStandings, type JudgedStanding } from '../../../domain/reading/note-standing';
import type { Reading } from '../../../domain/reading/reading';
import type { MarkKind, RoundId } from '../../../domain/records/rack-records';
import { isDone, nextNote, notesLeft } from '../../../domain/rounds/round-progress';
import { displayName } from '../../../domain/tuning/note-names';
import { type ToleranceSet, tolerancesAt } from '../../../domain/tuning/tolerances';
import type { MidiNote } from '../../../domain/tuning/units';
import { verdictOn } from '../../../domain/tuning/verdict';
import { readingOf } from '../../../state/listening/readout-phase';
import type { PanModel } from '../../../state/pan/pan-model';
import { noteToMark, type OpenRound, standingsOf } from '../../../state/round/open-round';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { MarkButtons } from '../../parts/controls/mark-buttons';
import { PanDrawing } from '../../parts/drawing/pan-drawing';
import { NotHere } from '../../parts/gates/instead';
import { NotKept } from '../../parts/gates/not-kept';
import { ViewGate } from '../../parts/gates/view-gate';
import { FarView } from '../../parts/listen/far-view';
import { MicrophoneLine } from '../../parts/listen/microphone-line';
import { Readout } from '../../parts/listen/readout';
import '../../parts/drawing/standing-map.css';
import { addressOf, goTo, type Route } from '../../frame/route';
import { StandingLegend } from '../../parts/drawing/standing-legend';
import { StandingMark } from '../../parts/drawing/standing-mark';
import { standingNoteMark } from '../../parts/drawing/standing-note-mark';
import { useFarView } from '../../parts/listen/use-far-view';
import { knockWords } from '../../words/fall/knock-words';
import { handsWords } from '../../words/measuring/hands-words';
import { panWords } from '../../words/pan-words';
import { rackWords } from '../../words/rack-words';
import { standingWords } from '../../words/standing-words';
import { words } from '../../words/words';
import './round-screen.css';

type Models = Needs<'round' | 'pan' | 'listen' | 'settings' | 'headset'>;

export function RoundScreen({ models, route }: ScreenProps<Models>) {
  return route.screen === 'round' ? <Opened models={models} route={route} /> : null;
}

function Opened({
  models,
  route,
}: {
  readonly models: Models;
  readonly route: Extract<Route, { readonly screen: 'round' | 'result' }>;
}) {
  const { round: model, listen } = models;
  useLayoutEffect(() => {
    void model.open(route.pan, route.round);
    // However the screen is left, the microphone goes off with it, at once; what was heard is kept.
    return () => {
      void listen.stop();
    };
  }, [model, listen, route.pan, route.round]);
  const view = model.view.value;
  const isOver = view.kind === 'open' && view.round.isOver;
  const isSoft = isKnockRound(models.pan, route.round);
  useEffect(() => {
    if (!isOver) return;
    if (isSoft) goTo({ screen: 'tonight', pan: route.pan });
    else goTo({ screen: 'result', pan: route.pan, round: route.round });
  }, [isOver, isSoft, route.pan, route.round]);
  return (
    <ViewGate
      view={view}
      missing={<NotHere text={panWords.roundMissing} />}
      onRetry={() => void model.open(route.pan, route.round)}
    >
      {({ round }) => <Round models={models} round={round} isSoft={isSoft} />}
    </ViewGate>
  );
}

/** Whether the round belongs to a knock check. */
function isKnockRound(pan: Pick<PanModel, 'view'>, round: RoundId): boolean {
  const view = pan.view.value;
  return (
    view.kind === 'open' && view.pan.records.knockChecks.some((check) => check.round === round)
  );
}

function Round({
  models,
  round,
  isSoft,
}: {
  readonly models: Models;
  readonly round: OpenRound;
  readonly isSoft: boolean;
}) {
  const { listen, round: model } = models;
  const { kept: progress, fields, start } = round;
  const done = progress.order.filter((note) => isDone(progress, note)).length;
  const asked = nextNote(progress);
  const standings = standingsOf(round, models.settings.limits.value);
  const phase = listen.phase.value;
  const verdictOf = (reading: Reading) =>
    verdictOn(
      judgedNote(reading.note, reading, wishOf(fields.layout, reading.note)),
      tolerancesAt(models.settings.limits.value, 'good'),
    );
  const microphone = listen.microphone.value.kind;
  const isOpen = microphone === 'listening' || microphone === 'priming' || microphone === 'asking';
  const far = useFarView(models, {
    // In a round a reading keeps itself.
    keep: () => undefined,
    next: () => model.choose(noteAfter(notesLeft(progress), asked)),
  });
  if (far.isFar) {
    return (
      <FarView
        phase={phase}
        expected={listen.expected.value}
        verdictOf={verdictOf}
        onLeave={far.leave}
      />
    );
  }
  return (
    <main
      class="screen round"
      data-done={done}
      data-next={asked ?? ''}
      data-left={notesLeft(progress).join(' ')}
    >
      <header class="top">
        <h1>{rackWords.nameOf(fields.name)}</h1>
        <span role="status">
          {panWords.progress(done, progress.order.length)} {panWords.heard}
        </span>
      </header>
      <Readout
        phase={phase}
        expected={listen.expected.value}
        onName={model.choose}
        verdictOf={verdictOf}
        short
        oneEach={start.way === 'quick'}
      />
      <LastDone round={round} limits={models.settings.limits.value} />
      {isSoft && <p class="quiet">{knockWords.softRound}</p>}
      <NotKept keeper={model} />
      <PanDrawing
        layout={fields.layout}
        label={(name, note) => {
          const standing = standings.get(note);
          const choose = panWords.chooseNote(name);
          return standing ? `${choose} (${standingWords(standing)})` : choose;
        }}
        markOf={(note) => {
          const standing = standings.get(note);
          if (standing) return standingNoteMark(standing);
          // The note that is asked for stands out from those that are still to come.
          return note === asked ? null : standingNoteMark(unread);
        }}
        chosen={asked ?? readingOf(phase)?.note ?? null}
        onNote={(note) => model.choose(note === progress.chosen ? null : note)}
      />
      <StandingLegend
        standings={countStandings(
          progress.order.map((note) => (standings.get(note) ?? unread).standing),
        )}
      />
      <Marks round={round} onMark={model.mark} />
      {progress.chosen !== null && (
        <button type="button" onClick={() => model.choose(null)}>
          {start.way === 'guided' ? panWords.backToOrder : words.anyNote}
        </button>
      )}
      <button type="button" onClick={far.show}>
        {handsWords.far}
      </button>
      {listen.last.value?.isOnPan && (
        <a class="button" href={addressOf('inside')}>
          {words.lookInside}
        </a>
      )}
      <MicrophoneLine listen={listen} />
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: start.pan })}>
          {panWords.leave}
        </a>
        {isOpen ? (
          <button type="button" onClick={model.finish}>
            {panWords.endRound}
          </button>
        ) : (
          <button type="button" class="main" onClick={() => void model.listen()}>
            {panWords.listenAgain}
          </button>
        )}
      </footer>
    </main>
  );
}

/** The note that is left after `asked`, the first one again after the last; null where none is. */
function noteAfter(left: readonly MidiNote[], asked: MidiNote | null): MidiNote | null {
  const at = asked === null ? -1 : left.indexOf(asked);
  return left[at + 1] ?? left[0] ?? null;
}

const unread: JudgedStanding = { standing: 'unread', reason: { kind: 'unread' } };

/** The note that was done last and how it stands: it stays until the next one is done. */
function LastDone({ round, limits }: { readonly round: OpenRound; readonly limits: ToleranceSet }) {
  const { lastDone } = round;
  const standing = lastDone === null ? undefined : standingsOf(round, limits).get(lastDone);
  if (lastDone === null || !standing) return null;
  return (
    <p class="last-done" data-note={lastDone}>
      <StandingMark standing={standing.standing} /> <b>{displayName(lastDone)}</b>{' '}
      {standingWords(standing)}
    </p>
  );
}

const markable: readonly MarkKind[] = ['dead', 'buzzing', 'cracked', 'skipped'];

function Marks({
  round,
  onMark,
}: {
  readonly round: OpenRound;
  readonly onMark: (mark: MarkKind) => void;
}) {
  const note = noteToMark(round);
  if (note === null) return null;
  const mark = round.kept.notes.get(note)?.mark ?? 'none';
  return (
    <section class="field" aria-label={`${panWords.mark} ${displayName(note)}`}>
      <h2>
        {panWords.mark} {displayName(note)}
      </h2>
      <MarkButtons kinds={markable} mark={mark} onMark={onMark} />
      {mark === 'cracked' && <p class="hint warn">{panWords.crackedCaution}</p>}
    </section>
  );
}
