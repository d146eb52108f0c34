// A pan through time: how it moves as a whole, and all its rounds.
import { useState } from 'preact/hooks';
import { newestSoftRound } from '../../../domain/knock-check/knock-rounds';
import { knockSigns, type ReadingsByRound } from '../../../domain/knock-check/round-signs';
import { type RoundStart, roundOf } from '../../../domain/records/rack-records';
import { isBefore } from '../../../domain/records/record-order';
import { panDrift, pitchTrend } from '../../../domain/rounds/pan-drift';
import {
  pitchByWarmth,
  usualTemperature,
  withoutWeather,
} from '../../../domain/rounds/pitch-by-warmth';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { roundsToRead } from '../../../domain/rounds/rounds-to-read';
import { tunerBaseline } from '../../../domain/rounds/tuner-baseline';
import { eventsCsv } from '../../../domain/tables/events-csv';
import { roundCsv } from '../../../domain/tables/round-csv';
import type { Hertz } from '../../../domain/tuning/units';
import { panAtAGlance } from '../../../state/pan/pan-at-a-glance';
import type { OpenPan } from '../../../state/pan/pan-model';
import { ChoiceBar } from '../../parts/controls/choice-bar';
import { CsvButton } from '../../parts/controls/csv-button';
import { Explained } from '../../parts/controls/explained';
import '../../parts/result/pan-pitch.css';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { PanDriftCharts } from '../../parts/charts/pan-drift-charts';
import { PanDriftTable } from '../../parts/charts/pan-drift-table';
import { PanGate } from '../../parts/gates/pan-gate';
import { RoundsGate } from '../../parts/gates/rounds-gate';
import { RoundRows } from '../../parts/result/round-rows';
import {
  historyWords,
  pitchTrendWords,
  unevennessTrendWords,
  warmthWords,
  withoutWeatherWords,
} from '../../words/history-words';
import { workWords } from '../../words/now-words';
import { panWords } from '../../words/pan-words';
import { sinceWords } from '../../words/since-words';
import { words } from '../../words/words';
import './result-screens.css';

type Models = Needs<'pan' | 'results' | 'settings' | 'fileHandout'>;

export function HistoryScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Loaded models={models} pan={pan} />}</PanGate>;
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
}

/** Rounds of the list at first, and with each "Show more". */
const listedAtOnce = 40;

function Loaded({ models, pan }: Props) {
  const [listed, list] = useState(listedAtOnce);
  const [isAll, readAll] = useState(false);
  const rounds = isAll ? pan.rounds : roundsToRead(pan.rounds, listed, neededRounds(pan));
  return (
    <RoundsGate results={models.results} pan={pan} rounds={rounds}>
      {({ results, readings }) => (
        <Shown
          models={models}
          pan={pan}
          rounds={rounds.flatMap((start) => results.get(roundOf(start)) ?? [])}
          readings={readings}
          listed={listed}
          onMore={() => list(listed + listedAtOnce)}
          onAll={() => readAll(true)}
        />
      )}
    </RoundsGate>
  );
}

/** Those that changes are counted from, and that a knock is judged by. */
function neededRounds({ records }: OpenPan): readonly RoundStart[] {
  const baseline = tunerBaseline(records);
  const soft = newestSoftRound(records);
  const rounds = [baseline.kind === 'none' ? null : baseline.round, soft?.round, soft?.before];
  return rounds.flatMap((round) => round ?? []);
}

function Shown({
  models,
  pan,
  rounds,
  readings,
  listed,
  onMore,
  onAll,
}: Props & {
  /** Those that were read, newest first. */
  readonly rounds: readonly RoundResult[];
  readonly readings: ReadingsByRound;
  /** How many of them the list has. */
  readonly listed: number;
  readonly onMore: () => void;
  /** Reads all of them, however long it takes. */
  readonly onAll: () => void;
}) {
  const { fields } = pan.current;
  const a4 = fields.a4 ?? models.settings.a4.value;
  const heard = () =>
    knockSigns(pan.records, readings, models.settings.limits.value.highestWithPartials);
  return (
    <main class="screen result">
      <header class="top">
        <h1>{historyWords.title}</h1>
        <span>{fields.name}</span>
      </header>
      {rounds.length === 0 ? (
        <p class="hint">{historyWords.noRounds}</p>
      ) : (
        <>
          <Drift pan={pan} rounds={rounds} a4={a4} />
          {workWords(panAtAGlance(pan, models.settings.judging.value)).map((each) => (
            <p key={each} class="hint">
              {each}
            </p>
          ))}
          <section class="rows">
            <h2>{historyWords.rounds}</h2>
            <RoundRows
              pan={pan.id}
              rounds={rounds.slice(0, listed)}
              usualAir={usualTemperature(rounds.map(({ conditions }) => conditions))}
            />
            {pan.rounds.length > listed && (
              <button type="button" onClick={onMore}>
                {historyWords.moreRounds(pan.rounds.length - listed)}
              </button>
            )}
          </section>
          {rounds.length < pan.rounds.length ? (
            <button type="button" onClick={onAll}>
              {historyWords.readAll(pan.rounds.length)}
            </button>
          ) : (
            <CsvButton
              handout={models.fileHandout}
              label={historyWords.allReadings}
              name={historyWords.allName(fields.name)}
              text={() => roundCsv(pan.rounds, readings, fields, a4, heard())}
            />
          )}
        </>
      )}
      <CsvButton
        handout={models.fileHandout}
        label={sinceWords.events}
        name={sinceWords.eventsName(fields.name)}
        text={() => eventsCsv(pan.records, fields, heard())}
      />
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {words.back}
        </a>
        {rounds.length === 0 && (
          <a class="button main" href={addressOf({ screen: 'begin', pan: pan.id })}>
            {panWords.startRound}
          </a>
        )}
      </footer>
    </main>
  );
}

type From = keyof typeof sinceWords.from;
const froms: readonly From[] = ['visit', 'all'];

/** How the pan moves, since the tuner was here where that is known and not otherwise chosen: across a tuning a slope says nothing. */
function Drift({
  pan,
  rounds,
  a4,
}: {
  readonly pan: OpenPan;
  readonly rounds: readonly RoundResult[];
  readonly a4: Hertz;
}) {
  const [from, choose] = useState<From>('visit');
  const baseline = tunerBaseline(pan.records);
  const first = baseline.kind === 'tuning' ? baseline.round : null;
  const since = first ? rounds.filter((each) => !isBefore(each, first)) : rounds;
  const isChoice = since.length < rounds.length;
  const shown = from === 'visit' ? since : rounds;
  const drift = panDrift(shown, a4);
  const warmth = pitchByWarmth(drift.points);
  const calm = warmth && pitchTrend(withoutWeather(drift.points, warmth));
  const nothing = isChoice && from === 'visit' ? sinceWords.oneSince : historyWords.oneRound;
  return (
    <>
      {isChoice && (
        <ChoiceBar
          legend={sinceWords.legend}
          values={froms}
          labels={sinceWords.from}
          chosen={from}
          onChoose={choose}
        />
      )}
      {shown.length === 1 && <p class="hint">{nothing}</p>}
      {shown.length > 1 && drift.points.length > 0 && (
        <section class="rows">
          <h2>{historyWords.driftTitle}</h2>
          <p class="pan-pitch">
            {pitchTrendWords(drift.pitch)} {unevennessTrendWords(drift.unevenness)}
          </p>
          {warmth && (
            <p class="warmth" data-slope={warmth.slope.toFixed(2)}>
              {warmthWords(warmth)} {withoutWeatherWords(warmth, calm)}
            </p>
          )}
          <PanDriftCharts points={drift.points} />
          <Explained words={['unevenness']} />
          <PanDriftTable points={drift.points} />
        </section>
      )}
    </>
  );
}
