// Can the pan be played tonight? One sentence, the reasons, the map, and what may be done until the tuner comes.

import { useMemo } from 'preact/hooks';
import type { ReadingsByRound } from '../../../domain/knock-check/round-signs';
import { type KnockCheck, roundOf } from '../../../domain/records/rack-records';
import type { RoundResult } from '../../../domain/rounds/round-result';
import type { OpenPan } from '../../../state/pan/pan-model';
import {
  signsOfPan,
  type TonightOfPan,
  type TonightRounds,
  tonightOfPan,
  tonightRounds,
} from '../../../state/pan/tonight-of-pan';
import type { PanScreenModels } from '../../frame/app-models';
import { addressOf } from '../../frame/route';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { RoundsGate, resultIn } from '../../parts/gates/rounds-gate';
import { MagnetField } from '../../parts/tonight/magnet-field';
import { SeenList } from '../../parts/tonight/seen-list';
import { SetNeedsForm } from '../../parts/tonight/set-needs-form';
import { TonightMap } from '../../parts/tonight/tonight-map';
import { TonightNotes } from '../../parts/tonight/tonight-notes';
import { TonightRulesForm } from '../../parts/tonight/tonight-rules-form';
import { cautionsWords } from '../../words/fall/cautions-words';
import { knockWords, lookWords } from '../../words/fall/knock-words';
import {
  firstSentence,
  reasonSentence,
  tonightWords,
  verdictSentence,
} from '../../words/fall/tonight-words';
import { noteListWords } from '../../words/list-words';
import { panWords } from '../../words/pan-words';
import { againstBandWords } from '../../words/result-words';
import { words } from '../../words/words';
import './tonight-screen.css';

export function TonightScreen({ models }: { readonly models: PanScreenModels }) {
  return <PanGate models={models}>{(pan) => <Loaded models={models} pan={pan} />}</PanGate>;
}

interface Props {
  readonly models: PanScreenModels;
  readonly pan: OpenPan;
}

/** Needs the round that is judged and the one that it is compared with. */
function Loaded({ models, pan }: Props) {
  const rounds = tonightRounds(pan);
  const { now, before } = rounds;
  return (
    <RoundsGate models={models} pan={pan} rounds={[now, before].filter((start) => start !== null)}>
      {(read) => (
        <Judged
          models={models}
          pan={pan}
          rounds={rounds}
          result={resultIn(read, now)}
          before={resultIn(read, before)}
          readings={read.readings}
        />
      )}
    </RoundsGate>
  );
}

/** The result by the rules and needs of this moment; the signs, which take longest, only once. */
function Judged({
  models,
  pan,
  rounds,
  result,
  before,
  readings,
}: Props & {
  readonly rounds: TonightRounds;
  readonly result: RoundResult | null;
  readonly before: RoundResult | null;
  readonly readings: ReadingsByRound;
}) {
  const { settings } = models;
  const { highestWithPartials } = settings.limits.value;
  const signs = useMemo(
    () => signsOfPan(pan, rounds, readings, highestWithPartials),
    [pan.records, rounds.now?.id, rounds.before?.id, highestWithPartials],
  );
  const tonight = tonightOfPan(pan, rounds.check, result, signs, {
    needs: settings.setNeeds.value,
    tunes: settings.tunes.value,
    rules: settings.tonightRules.value,
  });
  return (
    <Shown
      models={models}
      pan={pan}
      check={rounds.check}
      tonight={tonight}
      result={result}
      before={before}
    />
  );
}

function Shown({
  models,
  pan,
  check,
  tonight,
  result,
  before,
}: Props & {
  readonly check: KnockCheck | null;
  readonly tonight: TonightOfPan;
  readonly result: RoundResult | null;
  readonly before: RoundResult | null;
}) {
  const { verdict, reasons, first, tell } = tonight;
  return (
    <main class="screen tonight" data-pan={pan.id}>
      <header class="top">
        <h1>{tonightWords.title}</h1>
        <span>{pan.current.fields.name}</span>
      </header>
      <NotKept keeper={models.knock} />
      <p class="sentence" role="status" data-verdict={verdict.kind}>
        {verdictSentence(verdict, models.now())}
      </p>
      {reasons.length > 0 && (
        <ul class="cautions reasons" aria-label={tonightWords.why}>
          {reasons.map((reason, k) => (
            <li key={k} data-reason={reason.kind}>
              {reasonSentence(reason)}
            </li>
          ))}
        </ul>
      )}
      {first.length > 0 && (
        <section class="hint warn" aria-labelledby="first">
          <h2 id="first">{tonightWords.first}</h2>
          {first.map((look) => (
            <p key={look} data-look={look}>
              {firstSentence(look)}
            </p>
          ))}
        </section>
      )}
      {tell.map((look) => (
        <p key={look} class="quiet" data-look={look}>
          {tonightWords.keepInMind}: {lookWords[look].short}.
        </p>
      ))}
      <SetNeedsForm settings={models.settings} />
      {result && tonight.notes.length > 0 && (
        <Notes models={models} pan={pan} tonight={tonight} result={result} before={before} />
      )}
      <MagnetField
        pan={pan.id}
        notes={tonight.notes}
        magnets={[...tonight.magnets.keys()].sort((low, high) => low - high)}
        onLog={(...log) => void models.knock.logStopgap(...log)}
      />
      <p class="hint">
        {knockWords.never} {tonightWords.whoNext}
      </p>
      <a class="caution" href={addressOf('cautions')}>
        {cautionsWords.more}
      </a>
      {check && <SeenList check={check} photoOf={models.knock.photoOf} />}
      <TonightRulesForm settings={models.settings} />
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {words.back}
        </a>
        <Onward pan={pan} verdict={verdict.kind} />
      </footer>
    </main>
  );
}

function Notes({
  pan,
  tonight,
  result,
  before,
}: Props & {
  readonly tonight: TonightOfPan;
  readonly result: RoundResult;
  readonly before: RoundResult | null;
}) {
  const { notes, verdict, againstBand } = tonight;
  const was = new Map(
    (before?.notes ?? []).flatMap(({ note, againstPan, againstBand: band }) => {
      const cents = againstPan ?? band;
      return cents === null ? [] : [[note, cents] as const];
    }),
  );
  const read = notes.filter(({ isUnread }) => !isUnread);
  const needed = read.filter(({ isNeeded }) => isNeeded);
  const avoided = needed.filter(({ action }) => action === 'avoid');
  const unread = notes.filter(({ isUnread, isNeeded }) => isUnread && isNeeded);
  return (
    <>
      {verdict.kind === 'swap' && (
        <p class="quiet">
          {avoided.length > 0
            ? tonightWords.ifNone(noteListWords(avoided.map(({ note }) => note)))
            : tonightWords.ifNoneAll}
        </p>
      )}
      <TonightMap pan={pan.id} layout={pan.current.fields.layout} notes={notes} />
      <TonightNotes title={tonightWords.leaveOut} notes={avoided} before={was} />
      <TonightNotes
        title={tonightWords.inPassing}
        notes={needed.filter(({ action }) => action === 'in-passing')}
        before={was}
      />
      <TonightNotes
        title={tonightWords.otherNotes}
        notes={read.filter(({ isNeeded, action }) => !isNeeded && action !== 'play')}
        before={was}
      />
      {unread.length > 0 && (
        <p class="hint">{tonightWords.unread(noteListWords(unread.map(({ note }) => note)))}</p>
      )}
      <section class="field" aria-labelledby="against-band">
        <h2 id="against-band">{tonightWords.againstBand}</h2>
        <p data-cents={againstBand?.cents.toFixed(2) ?? ''} class="against-band">
          {result.panPitch && againstBand
            ? `${tonightWords.wholePan(againstBandWords(result.panPitch, result.a4))} ${againstBand.isHeard ? tonightWords.heard : tonightWords.notHeard}`
            : tonightWords.noPitch}
        </p>
      </section>
    </>
  );
}

/** What comes next: the round that was begun, or the knock check. */
function Onward({
  pan,
  verdict,
}: {
  readonly pan: OpenPan;
  readonly verdict: TonightOfPan['verdict']['kind'];
}) {
  if (verdict === 'strike-first' && pan.openRound) {
    return (
      <a
        class="button main"
        href={addressOf({ screen: 'round', pan: pan.id, round: roundOf(pan.openRound) })}
      >
        {panWords.resumeRound}
      </a>
    );
  }
  const isOpen = verdict === 'strike-first' || verdict === 'wait';
  return (
    <a class={isOpen ? 'button main' : 'button'} href={addressOf({ screen: 'knock', pan: pan.id })}>
      {tonightWords.lookAgain}
    </a>
  );
}
