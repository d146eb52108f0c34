// The answer for tonight: the sentence, why, what to do first, the notes, and what may be done until the tuner comes.
import { type KnockCheck, roundOf } from '../../../domain/records/rack-records';
import type { DatedPanNow } from '../../../domain/rounds/pan-now';
import type { RoundResult } from '../../../domain/rounds/round-result';
import type { Instant } from '../../../domain/tuning/units';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { TonightOfPan } from '../../../state/pan/tonight-of-pan';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { Explained } from '../../parts/controls/explained';
import { NotKept } from '../../parts/gates/not-kept';
import { MagnetField } from '../../parts/tonight/magnet-field';
import { SeenList } from '../../parts/tonight/seen-list';
import { SendTonight } from '../../parts/tonight/send-tonight';
import { SetNeedsForm } from '../../parts/tonight/set-needs-form';
import { TonightPan } from '../../parts/tonight/tonight-pan';
import { TonightRulesForm } from '../../parts/tonight/tonight-rules-form';
import { cautionsWords } from '../../words/fall/cautions-words';
import { knockWords, lookWords } from '../../words/fall/knock-words';
import { type TonightMessage, tonightMessage } from '../../words/fall/tonight-message';
import {
  firstSentence,
  reasonSentence,
  tonightWords,
  verdictSentence,
} from '../../words/fall/tonight-words';
import { listWords } from '../../words/list-words';
import { panWords } from '../../words/pan-words';
import { rackWords } from '../../words/rack-words';
import { words } from '../../words/words';
import './tonight-answer.css';

export function TonightAnswer({
  knock,
  settings,
  fileHandout,
  now,
  pan,
  check,
  tonight,
  result,
  before,
}: Needs<'knock' | 'settings' | 'now' | 'fileHandout'> & {
  readonly pan: OpenPan;
  readonly check: KnockCheck | null;
  readonly tonight: TonightOfPan;
  readonly result: DatedPanNow | null;
  readonly before: RoundResult | null;
}) {
  const { verdict, reasons, first, tell } = tonight;
  const signs = tonight.notes.flatMap(({ reasons: all }) =>
    all.flatMap((each) => (each.kind === 'sign' ? each.sign : [])),
  );
  const unclear = (['choked', 'walking'] as const).filter((each) => signs.includes(each));
  const hasNotes = pan.current.fields.layout.drums.some(({ notes }) => notes.length > 0);
  return (
    <main class="screen tonight" data-pan={pan.id}>
      <header class="top">
        <h1>{tonightWords.title}</h1>
        <span>{pan.current.fields.name}</span>
      </header>
      <NotKept keeper={knock} />
      <p class="sentence" role="status" data-verdict={verdict.kind}>
        {verdictSentence(verdict, now())}
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
      {verdict.kind !== 'strike-first' && (
        <SendTonight
          handout={fileHandout}
          message={messageOf(pan, tonight, now())}
          layout={pan.current.fields.layout}
          notes={tonight.notes}
        />
      )}
      {tonight.unsure.length > 0 && (
        <p class="quiet" data-unsure={tonight.unsure.join(' ')}>
          {tonightWords.unsure(listWords(tonight.unsure.map((look) => lookWords[look].short)))}
        </p>
      )}
      {!hasNotes && (
        <section class="field">
          <p>{tonightWords.noDrawing}</p>
          <a class="button" href={addressOf('listen')}>
            {tonightWords.listenToIt}
          </a>
          <a class="button" href={addressOf({ screen: 'layout', pan: pan.id })}>
            {tonightWords.drawIt}
          </a>
        </section>
      )}
      <SetNeedsForm settings={settings} />
      {result && tonight.notes.length > 0 && (
        <TonightPan pan={pan} tonight={tonight} result={result} before={before} />
      )}
      <Explained words={unclear} />
      <MagnetField
        pan={pan.id}
        notes={tonight.notes}
        magnets={[...tonight.magnets.keys()].sort((low, high) => low - high)}
        onLog={(...log) => void knock.logStopgap(...log)}
      />
      <p class="hint">
        {knockWords.never} {tonightWords.whoNext}
      </p>
      <a class="caution" href={addressOf('cautions')}>
        {cautionsWords.more}
      </a>
      {check && <SeenList check={check} photoOf={knock.photoOf} />}
      <TonightRulesForm settings={settings} />
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {words.back}
        </a>
        <Onward pan={pan} verdict={verdict.kind} />
      </footer>
    </main>
  );
}

const messageOf = ({ current }: OpenPan, tonight: TonightOfPan, now: Instant): TonightMessage =>
  tonightMessage({ name: rackWords.nameOf(current.fields.name), now, ...tonight });

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
