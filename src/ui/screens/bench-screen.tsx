// The bench: one note, the big word, what the last blows did, what to try next, and what must be checked afterwards.

import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ringPairs, ringPartnersOf } from '../../domain/pans/ring-partners';
import type { MarkKind } from '../../domain/records/rack-records';
import { displayName } from '../../domain/tuning/note-names';
import { tolerancesAt } from '../../domain/tuning/tolerances';
import type { MidiNote } from '../../domain/tuning/units';
import { verdictOn } from '../../domain/tuning/verdict';
import {
  effectOfNewest,
  isAwaiting,
  newestReading,
  newestStep,
  openingReading,
} from '../../domain/work/bench-course';
import type { Reading } from '../../domain/work/reading';
import { judgeOf } from '../../state/bench-judging';
import type { BenchMove } from '../../state/bench-moves';
import { noteHeard, type OpenBench } from '../../state/open-bench';
import type { PanScreenModels } from '../app-models';
import type { ScreenProps } from '../late-screen';
import { AdviceCard, AdviceConsent } from '../parts/advice-card';
import { BenchLines } from '../parts/bench-lines';
import { BenchTrail } from '../parts/bench-trail';
import { BlowLog } from '../parts/blow-log';
import { CheckList } from '../parts/check-list';
import { FarView } from '../parts/far-view';
import { MicrophoneLine } from '../parts/microphone-line';
import { NoteDrawing } from '../parts/note-drawing';
import { noteListWords } from '../words/list-words';
import '../parts/note-rows.css';
import { NotKept } from '../parts/not-kept';
import { Instead } from '../parts/pan-gate';
import { Readout } from '../parts/readout';
import { HowSure, ReadoutHints } from '../parts/readout-hints';
import { useHandKeys } from '../parts/use-hand-keys';
import { useSpokenVerdicts } from '../parts/use-spoken-verdicts';
import { addressOf, goTo } from '../route';
import { words } from '../words';
import {
  benchWords,
  blowsHeard,
  changeWords,
  loggedWords,
  partialName,
} from '../words/bench-words';
import { handsWords } from '../words/hands-words';
import { panWords } from '../words/pan-words';
import { rackWords, storeTroubleWords } from '../words/rack-words';
import './bench-screen.css';

export function BenchScreen({ models, route }: ScreenProps) {
  const { bench: model } = models;
  const isBench = route.screen === 'bench' || route.screen === 'bare-bench';
  const note = isBench ? route.note : null;
  const pan = route.screen === 'bench' ? route.pan : null;
  useEffect(() => {
    if (note === null) return;
    void model.open(pan === null ? { kind: 'bare', note } : { kind: 'pan', pan, note });
    const keepWhenHidden = (): void => {
      if (document.visibilityState === 'hidden') model.keep();
    };
    document.addEventListener('visibilitychange', keepWhenHidden);
    // However the screen is left, the microphone goes off with it; what was heard is kept.
    return () => {
      document.removeEventListener('visibilitychange', keepWhenHidden);
      model.leave();
    };
  }, [model, note, pan]);
  const view = model.view.value;
  switch (view.kind) {
    case 'open':
      return <Bench models={models} bench={view.bench} />;
    case 'none':
    case 'loading':
      return <Instead text={rackWords.reading} tone="hint" />;
    case 'missing':
      return <Instead text={benchWords.missing} tone="hint warn" />;
    case 'trouble':
      return <Instead text={storeTroubleWords[view.trouble]} tone="hint warn" />;
  }
}

/** What a simulated note needs in place of microphone and hammer. */
export interface SimulatedBench {
  readonly title: string;
  readonly hammer: ComponentChildren;
  readonly strike: (note: MidiNote) => void;
  readonly strikeWords: (note: string) => string;
  readonly leave: () => void;
  readonly leaveWords: string;
}

export function Bench({
  models,
  bench,
  simulated = null,
}: {
  readonly models: PanScreenModels;
  readonly bench: OpenBench;
  readonly simulated?: SimulatedBench | null;
}) {
  const { bench: model, settings } = models;
  const { course, around, check, subject } = bench;
  const [isLogging, setIsLogging] = useState(false);
  const limits = settings.limits.value;
  const phase = model.phase.value;
  const judge = judgeOf(around, noteHeard(bench));
  const verdictOf = (reading: Reading) => verdictOn(judge(reading), tolerancesAt(limits, 'good'));
  const awaits = isAwaiting(course) && !check;
  const reading = newestReading(check ?? course);
  const opening = check ? null : openingReading(course);
  const advice = model.advice.value;
  const showsLog = !check && (isLogging || awaits);
  const [isFar, setIsFar] = useState(false);
  useSpokenVerdicts(models, verdictOf);
  useHandKeys(
    models,
    { keep: model.keep, next: () => follow(model.next(), bench) },
    // Any other key leads back from the far view.
    () => {
      setIsFar(false);
      return isFar;
    },
  );
  if (isFar) {
    return (
      <FarView
        phase={phase}
        expected={noteHeard(bench)}
        verdictOf={verdictOf}
        onLeave={() => setIsFar(false)}
      />
    );
  }
  return (
    <main
      class="screen bench"
      data-note={course.note}
      data-checking={check?.note ?? ''}
      data-sets={course.steps.filter(({ blows }) => blows !== null).length}
      data-awaits={awaits}
      data-blows={awaits ? (newestStep(course).blows?.count ?? 0) : 0}
      data-ahead={model.ahead.value.kind}
    >
      <header class="top">
        <h1>{check ? benchWords.checking(displayName(course.note)) : benchWords.bench}</h1>
        <span>{simulated?.title ?? (around.name === '' ? benchWords.bareHint : around.name)}</span>
      </header>
      <Readout
        phase={phase}
        expected={noteHeard(bench)}
        onName={() => undefined}
        verdictOf={verdictOf}
        short
      />
      <Cover bench={bench} reading={reading} />
      {awaits && <Awaiting bench={bench} />}
      {!check && !awaits && <Effect models={models} bench={bench} />}
      {reading && (phase.kind === 'heard' || phase.kind === 'settled') && (
        <ReadoutHints reading={{ ...reading, ...judge(reading) }} />
      )}
      <NotKept keeper={model} />
      {advice && <AdviceCard shown={advice} reading={reading} />}
      {simulated
        ? !check && simulated.hammer
        : showsLog && <BlowLog models={models} bench={bench} />}
      {reading && (
        <BenchLines
          before={opening && opening !== reading ? judge(opening) : null}
          now={judge(reading)}
          limits={limits}
        />
      )}
      {reading && !showsLog && <NoteDrawing reading={{ ...reading, ...judge(reading) }} />}
      {!check && <BenchTrail course={course} around={around} limits={limits} />}
      <CheckList models={models} bench={bench} />
      {!check && <AdviceConsent models={models} bench={bench} />}
      {!check && subject.kind === 'pan' && <Marks models={models} bench={bench} />}
      {reading && <HowSure reading={reading} />}
      {reading && !newestStep(check ?? course).kept.isAll && subject.kind === 'pan' && !awaits && (
        <button type="button" onClick={model.keep}>
          {benchWords.keep}
        </button>
      )}
      <button type="button" onClick={() => setIsFar(true)}>
        {handsWords.far}
      </button>
      {!simulated && <MicrophoneLine listen={models.listen} />}
      <footer class="actions">
        {!model.isHearing.value && !simulated && (
          <a
            class="button"
            href={addressOf(
              subject.kind === 'pan' ? { screen: 'pan', pan: subject.pan } : 'listen',
            )}
          >
            {words.back}
          </a>
        )}
        {check ? (
          <button type="button" onClick={() => model.check(null)}>
            {benchWords.nextBack(displayName(course.note))}
          </button>
        ) : simulated ? (
          <button type="button" onClick={simulated.leave}>
            {simulated.leaveWords}
          </button>
        ) : (
          <button
            type="button"
            aria-expanded={showsLog}
            onClick={() => setIsLogging(!isLogging)}
            disabled={awaits}
          >
            {isLogging && !awaits ? benchWords.closeBlows : benchWords.blows}
          </button>
        )}
        {simulated ? (
          <button type="button" class="main" onClick={() => simulated.strike(noteHeard(bench))}>
            {simulated.strikeWords(displayName(noteHeard(bench)))}
          </button>
        ) : model.isHearing.value ? (
          <button type="button" class="main" onClick={() => follow(model.next(), bench)}>
            {nextWords(model.ahead.value, bench)}
          </button>
        ) : (
          <button type="button" class="main" onClick={() => void model.listen()}>
            {benchWords.listen}
          </button>
        )}
      </footer>
    </main>
  );
}

function nextWords(move: BenchMove, { check, course }: OpenBench): string {
  switch (move.kind) {
    case 'check':
      return benchWords.nextCheck(displayName(move.note));
    case 'note':
      return benchWords.nextNote(displayName(move.note));
    case 'done':
      return check ? benchWords.nextBack(displayName(course.note)) : benchWords.done;
  }
}

/** Goes where moving on leads, if that is another screen. */
export function follow(move: BenchMove, { subject, check }: OpenBench): void {
  if (move.kind === 'note') goTo({ screen: 'bench', pan: move.pan, note: move.note });
  else if (move.kind === 'done' && !check && subject.kind !== 'practice') {
    goTo(subject.kind === 'pan' ? { screen: 'pan', pan: subject.pan } : 'listen');
  }
}

/** A hand covers no more; those that ring along most are named. */
const mostCovered = 4;

/** Which notes are to be covered, said before the first strike; and what was heard of them after it. */
function Cover({
  bench,
  reading,
}: {
  readonly bench: OpenBench;
  readonly reading: Reading | null;
}) {
  const { layout } = bench.around;
  if (!layout) return null;
  const partners = ringPartnersOf(noteHeard(bench), ringPairs(layout));
  const notes = [...new Set(partners.map(({ other }) => other.note))].slice(0, mostCovered);
  const [only] = notes;
  if (only === undefined) return null;
  if (reading === null) {
    return (
      <p class="hint cover">
        {notes.length === 1
          ? benchWords.coverOne(displayName(only))
          : benchWords.cover(noteListWords(notes))}
      </p>
    );
  }
  const rings = new Set<MidiNote>(
    (reading.heard.at(-1)?.alsoRinging ?? []).flatMap(({ note }) => note ?? []),
  );
  const heard = notes.filter((note) => rings.has(note));
  return heard.length === 0 ? null : (
    <p class="aside cover">{benchWords.ringing(noteListWords(heard))}</p>
  );
}

function Awaiting({ bench }: { readonly bench: OpenBench }) {
  const { blows } = newestStep(bench.course);
  if (!blows) return null;
  return (
    <p class="hint awaiting" role="status">
      <b>{blowsHeard(blows)}</b> {benchWords.strikeNow(displayName(bench.course.note))}
    </p>
  );
}

/** What the newest answered set of blows did. */
function Effect({
  models,
  bench,
}: {
  readonly models: PanScreenModels;
  readonly bench: OpenBench;
}) {
  const effect = effectOfNewest(bench.course);
  if (!effect) return null;
  const reading = newestReading(bench.course);
  return (
    <section class="hint effect" aria-label={benchWords.sinceBlows}>
      <h2>{benchWords.sinceBlows}</h2>
      <p class="changes">
        {effect.changes.length === 0
          ? benchWords.nothingToCompare
          : effect.changes.map((change) => (
              <span key={change.partial} data-change={change.partial} data-sure={change.isSure}>
                {partialName(change.partial, reading)} <b>{changeWords(change)}</b>
              </span>
            ))}
      </p>
      <p class="quiet">
        {blowsHeard(effect.blows)}{' '}
        {effect.blows.logged ? `${benchWords.logged}: ${loggedWords(effect.blows.logged)}.` : ''}
      </p>
      {models.bench.advice.value?.isSurprise && <p>{benchWords.surprise}</p>}
    </section>
  );
}

const markable: readonly MarkKind[] = ['dead', 'buzzing', 'cracked'];

function Marks({ models, bench }: { readonly models: PanScreenModels; readonly bench: OpenBench }) {
  const mark = bench.around.marks.get(bench.course.note) ?? 'none';
  return (
    <>
      <details class="how-sure">
        <summary>{benchWords.mark}</summary>
        <div class="pair marks">
          {markable.map((kind) => (
            <button
              key={kind}
              type="button"
              aria-pressed={mark === kind}
              onClick={() => models.bench.mark(mark === kind ? 'none' : kind)}
            >
              {panWords.marks[kind]}
            </button>
          ))}
        </div>
      </details>
      {mark === 'cracked' && <p class="hint warn">{benchWords.crackedCaution}</p>}
    </>
  );
}
