// What a round found: the map, the pan pitch, the worst notes, the partners that beat, and what changed.
import { useEffect, useState } from 'preact/hooks';
import { type RoundId, type RoundStart, roundOf } from '../../../domain/records/rack-records';
import { olderFirst } from '../../../domain/records/record-order';
import { withoutErased } from '../../../domain/records/standing/without-erased';
import { endsToGoOn } from '../../../domain/rounds/ends-to-go-on';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { panAtAGlance } from '../../../state/pan/pan-at-a-glance';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf, goTo } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { ChoiceBar } from '../../parts/controls/choice-bar';
import { NotHere } from '../../parts/gates/instead';
import { PanGate } from '../../parts/gates/pan-gate';
import { resultIn } from '../../parts/gates/rounds-gate';
import { ViewGate } from '../../parts/gates/view-gate';
import { ResultNow } from '../../parts/result/result-now';
import { RoundComparison } from '../../parts/result/round-comparison';
import { changeWords } from '../../words/change-words';
import { momentWords } from '../../words/day-words';
import { roundEndWords } from '../../words/measuring/round-end-words';
import { nowWords } from '../../words/now-words';
import { panWords } from '../../words/pan-words';
import { rackWords } from '../../words/rack-words';
import './result-screens.css';
import { conditionWords, resultWords } from '../../words/result-words';

type Models = Needs<'pan' | 'results' | 'settings' | 'fileHandout' | 'now'>;

type View = keyof typeof changeWords.views;
const views: readonly View[] = ['now', 'change'];

export function ResultScreen({ models, route }: ScreenProps<Models>) {
  if (route.screen !== 'result') return null;
  return (
    <PanGate model={models.pan}>
      {(pan) => {
        const start = withoutErased(pan.records).rounds.find(
          (each) => roundOf(each) === route.round,
        );
        return start ? (
          <Loaded models={models} pan={pan} start={start} />
        ) : (
          <NotHere text={panWords.roundMissing} />
        );
      }}
    </PanGate>
  );
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
  readonly start: RoundStart;
}

/** Reads the round, and the one it is compared with: the newest earlier one until another is chosen. */
function Loaded({ models, pan, start }: Props) {
  const { results } = models;
  const earlier = pan.rounds.filter((each) => olderFirst(each, start) < 0);
  const [chosen, choose] = useState<RoundId | null>(null);
  const before = earlier.find((each) => roundOf(each) === chosen) ?? earlier[0] ?? null;
  const read = () => void results.read(pan.records, before ? [start, before] : [start]);
  useEffect(read, [results, pan.records, start.id, before?.id]);
  const view = results.view.value;
  const isThis = view.kind !== 'open' || view.results.has(roundOf(start));
  return (
    <ViewGate view={isThis ? view : { kind: 'loading' }} onRetry={read}>
      {(found) => {
        const result = resultIn(found, start);
        return (
          result && (
            <Shown
              models={models}
              pan={pan}
              start={start}
              result={result}
              earlier={earlier}
              since={before && roundOf(before)}
              before={resultIn(found, before)}
              onSince={choose}
            />
          )
        );
      }}
    </ViewGate>
  );
}

/** The round shows its day, not what was done since. */
const wasWorkedOn = (pan: OpenPan, { settings }: Models): boolean =>
  panAtAGlance(pan, settings.judging.value).notes.some(
    ({ takenIn, work }) => takenIn === 'bench' || work !== 'none',
  );

function Shown({
  models,
  pan,
  start,
  result,
  earlier,
  since,
  before,
  onSince,
}: Props & {
  readonly result: RoundResult;
  readonly earlier: readonly RoundStart[];
  readonly since: RoundId | null;
  readonly before: RoundResult | null;
  readonly onSince: (round: RoundId) => void;
}) {
  const [shown, show] = useState<View>('now');
  const isFinished = pan.rounds.some(({ id }) => id === start.id);
  const isNewest = pan.rounds[0]?.id === start.id;
  const conditions = conditionWords(result.conditions);
  return (
    <main class="screen result" data-round={result.round}>
      <header class="top">
        <h1>{rackWords.nameOf(pan.current.fields.name)}</h1>
        <span>
          {resultWords.ways[result.way]}, {momentWords(result.at)}
        </span>
      </header>
      {!isFinished && <p class="hint">{resultWords.notFinished}</p>}
      {isNewest && wasWorkedOn(pan, models) && <p class="hint">{nowWords.asOfItsDay}</p>}
      {result.isProvisional ? (
        <p class="hint warn">
          <b>{resultWords.provisional}</b> {conditions}
        </p>
      ) : (
        conditions !== '' && <p class="quiet">{conditions}</p>
      )}
      {since !== null && (
        <ChoiceBar
          legend={changeWords.view}
          isSpoken
          values={views}
          labels={changeWords.views}
          chosen={shown}
          onChoose={show}
        />
      )}
      {since !== null && shown === 'change' ? (
        <RoundComparison
          pan={pan}
          now={result}
          before={before}
          since={since}
          earlier={earlier}
          onSince={onSince}
        />
      ) : (
        <ResultNow
          settings={models.settings}
          results={models.results}
          handout={models.fileHandout}
          pan={pan}
          start={start}
          result={result}
        />
      )}
      {since === null && isFinished && <p class="quiet">{changeWords.first}</p>}
      <RoundTools models={models} pan={pan} start={start} />
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'history', pan: pan.id })}>
          {panWords.history}
        </a>
        <a class="button main" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {resultWords.toPan}
        </a>
      </footer>
    </main>
  );
}

/** Goes on with a round that was finished within a day, or takes it out. */
function RoundTools({ models, pan, start }: Props) {
  const { pan: model, now } = models;
  const round = roundOf(start);
  const ends = endsToGoOn(pan.records, round, now());
  return (
    <div class="pair">
      {ends.length > 0 && (
        <button
          type="button"
          onClick={() => {
            const erased = ends.map((end) => model.erase(end.id));
            void Promise.all(erased).then(() => goTo({ screen: 'round', pan: pan.id, round }));
          }}
        >
          {roundEndWords.goOnWith}
        </button>
      )}
      <button
        type="button"
        onClick={() => {
          void model.erase(start.id, { kind: 'round' });
          goTo({ screen: 'pan', pan: pan.id });
        }}
      >
        {roundEndWords.takeOut}
      </button>
    </div>
  );
}
