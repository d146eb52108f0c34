// One note on the bench: the big word, what the last blows did, what to try next, and what must be checked afterwards.
import { useState } from 'preact/hooks';
import {
  isAwaiting,
  newestReading,
  newestStep,
  openingReading,
  setToLog,
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
import type { TargetTone } from '../../../state/listening/target-tone';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { benchWords } from '../../words/measuring/bench-words';
import { handsWords } from '../../words/measuring/hands-words';
import { useHandKeys } from '../controls/use-hand-keys';
import { NoteDrawing } from '../drawing/note-drawing';
import { BenchHands } from '../hands/bench-hands';
import { CoverHint } from '../hands/cover-hint';
import { MicrophoneLine } from '../listen/microphone-line';
import { AdviceCard, AdviceConsent } from './advice-card';
import { BenchActions, type SimulatedBench } from './bench-actions';
import { BenchByEar } from './bench-by-ear';
import { BenchCautions, showCautions } from './bench-cautions';
import { BenchLines } from './bench-lines';
import { BenchMarks } from './bench-marks';
import { BenchMoves, follow } from './bench-moves-row';
import { BenchTrail } from './bench-trail';
import { BlowLog } from './blow-log';
import { EffectOfBlows } from './blows-effect';
import { CheckList } from './check-list';
import '../drawing/note-rows.css';
import { NotKept } from '../gates/not-kept';
import { HowSure, ReadoutHints } from '../listen/readout-hints';
import { useSpokenVerdicts } from '../listen/use-spoken-verdicts';
import './bench.css';

/** What the bench needs around it, wherever it stands. */
export interface BenchNeeds {
  readonly model: BenchModel;
  readonly settings: SettingsModel;
  readonly listen: ListenModel;
  readonly announcer: Announcer;
  readonly headset: Headset;
  /** Tones to tune to by ear; without them nothing is heard but the strikes. */
  readonly tone?: TargetTone;
}

export function Bench({
  model,
  settings,
  listen,
  announcer,
  headset,
  tone,
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
  const showsLog = !check && (isLogging || awaits || setToLog(course) === 'answered');
  useSpokenVerdicts({ announcer, listen, settings }, model.phase, verdictOf);
  useHandKeys({ settings, headset }, { keep: model.keep, next: () => follow(model.next(), bench) });
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
      <BenchHands model={model} listen={listen} bench={bench} limits={limits} verdictOf={verdictOf}>
        <NotKept keeper={model} />
        {!simulated && (
          <button type="button" class="hands-caution" onClick={showCautions}>
            {handsWords.caution}
          </button>
        )}
      </BenchHands>
      <header class="top">
        <h1>{check ? benchWords.checking(displayName(course.note)) : benchWords.bench}</h1>
        <span>{simulated?.title ?? (around.name === '' ? benchWords.bareHint : around.name)}</span>
      </header>
      {reading && <CoverHint bench={bench} reading={reading} />}
      {!check && !awaits && (
        <EffectOfBlows bench={bench} isSurprise={advice?.isSurprise ?? false} />
      )}
      {reading && (phase.kind === 'heard' || phase.kind === 'settled') && (
        <ReadoutHints reading={{ ...reading, ...judge(reading) }} />
      )}
      {simulated
        ? !check && simulated.hammer
        : showsLog && <BlowLog model={model} settings={settings} bench={bench} />}
      {advice && <AdviceCard shown={advice} reading={reading} />}
      <BenchMoves
        model={model}
        bench={bench}
        isSimulated={simulated !== null}
        isLogging={isLogging}
        onLogging={setIsLogging}
      />
      {reading && (
        <BenchLines
          before={opening && opening !== reading ? judge(opening) : null}
          now={judge(reading)}
          limits={limits}
        />
      )}
      {reading && <NoteDrawing reading={{ ...reading, ...judge(reading) }} />}
      {!check && <BenchTrail course={course} around={around} limits={limits} />}
      <CheckList model={model} limits={limits} bench={bench} />
      {!check && <AdviceConsent settings={settings} bench={bench} />}
      {!check && subject.kind === 'pan' && <BenchMarks bench={bench} onMark={model.mark} />}
      {reading && <HowSure reading={reading} />}
      {tone && <BenchByEar model={model} bench={bench} tone={tone} />}
      {!simulated && <MicrophoneLine listen={listen} />}
      {!simulated && <BenchCautions />}
      <BenchActions model={model} bench={bench} simulated={simulated} />
    </main>
  );
}
