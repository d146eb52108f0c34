// One note on the bench: the big word, what the last blows did, what to try next, and what must be checked afterwards.
import { useState } from 'preact/hooks';
import {
  isAwaiting,
  newestReading,
  newestStep,
  openingReading,
} from '../../../domain/bench/bench-course';
import type { Headset } from '../../../domain/ports/headset-port';
import type { Announcer } from '../../../domain/ports/sound-ports';
import type { Reading } from '../../../domain/reading/reading';
import { displayName } from '../../../domain/tuning/note-names';
import { tolerancesAt } from '../../../domain/tuning/tolerances';
import { verdictOn } from '../../../domain/tuning/verdict';
import { judgeOf } from '../../../state/bench/bench-judging';
import type { BenchModel } from '../../../state/bench/bench-model';
import { noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import type { ListenModel } from '../../../state/listening/listen-model';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { benchWords } from '../../words/measuring/bench-words';
import { handsWords } from '../../words/measuring/hands-words';
import { NoteDrawing } from '../drawing/note-drawing';
import { FarView } from '../listen/far-view';
import { MicrophoneLine } from '../listen/microphone-line';
import { AdviceCard, AdviceConsent } from './advice-card';
import { BenchActions, follow, type SimulatedBench } from './bench-actions';
import { BenchLines } from './bench-lines';
import { BenchMarks } from './bench-marks';
import { BenchTrail } from './bench-trail';
import { BlowLog } from './blow-log';
import { Awaiting, EffectOfBlows } from './blows-effect';
import { CheckList } from './check-list';
import { CoverHint } from './cover-hint';
import '../drawing/note-rows.css';
import { NotKept } from '../gates/not-kept';
import { Readout } from '../listen/readout';
import { HowSure, ReadoutHints } from '../listen/readout-hints';
import { useFarView } from '../listen/use-far-view';
import { useSpokenVerdicts } from '../listen/use-spoken-verdicts';
import './bench.css';

/** What the bench needs around it, wherever it stands. */
export interface BenchNeeds {
  readonly model: BenchModel;
  readonly settings: SettingsModel;
  readonly listen: ListenModel;
  readonly announcer: Announcer;
  readonly headset: Headset;
}

export function Bench({
  model,
  settings,
  listen,
  announcer,
  headset,
  bench,
  simulated = null,
}: BenchNeeds & {
  readonly bench: OpenBench;
  readonly simulated?: SimulatedBench | null;
}) {
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
  useSpokenVerdicts({ announcer, listen, settings }, model.phase, verdictOf);
  const far = useFarView(
    { settings, headset },
    { keep: model.keep, next: () => follow(model.next(), bench) },
  );
  if (far.isFar) {
    return (
      <FarView
        phase={phase}
        expected={noteHeard(bench)}
        verdictOf={verdictOf}
        onLeave={far.leave}
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
      <CoverHint bench={bench} reading={reading} />
      {awaits && <Awaiting bench={bench} />}
      {!check && !awaits && (
        <EffectOfBlows bench={bench} isSurprise={advice?.isSurprise ?? false} />
      )}
      {reading && (phase.kind === 'heard' || phase.kind === 'settled') && (
        <ReadoutHints reading={{ ...reading, ...judge(reading) }} />
      )}
      <NotKept keeper={model} />
      {advice && <AdviceCard shown={advice} reading={reading} />}
      {simulated
        ? !check && simulated.hammer
        : showsLog && <BlowLog model={model} settings={settings} bench={bench} />}
      {reading && (
        <BenchLines
          before={opening && opening !== reading ? judge(opening) : null}
          now={judge(reading)}
          limits={limits}
        />
      )}
      {reading && !showsLog && <NoteDrawing reading={{ ...reading, ...judge(reading) }} />}
      {!check && <BenchTrail course={course} around={around} limits={limits} />}
      <CheckList model={model} limits={limits} bench={bench} />
      {!check && <AdviceConsent settings={settings} bench={bench} />}
      {!check && subject.kind === 'pan' && <BenchMarks bench={bench} onMark={model.mark} />}
      {reading && <HowSure reading={reading} />}
      {reading && !newestStep(check ?? course).kept.isAll && subject.kind === 'pan' && !awaits && (
        <button type="button" onClick={model.keep}>
          {benchWords.keep}
        </button>
      )}
      <button type="button" onClick={far.show}>
        {handsWords.far}
      </button>
      {!simulated && <MicrophoneLine listen={listen} />}
      <BenchActions
        model={model}
        bench={bench}
        simulated={simulated}
        isLogging={isLogging}
        onLogging={setIsLogging}
      />
    </main>
  );
}
