// After a fall: look first, one question at a time; then the place of the hit; then the soft round, or no round at all.
import { useEffect, useState } from 'preact/hooks';
import { rulesWith, type TonightRules } from '../../../domain/knock-check/tonight-rules';
import { longestOfKnock } from '../../../domain/records/longest-texts';
import { type LookKind, lookKinds } from '../../../domain/records/look-kinds';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { KnockDraft } from '../../../state/round/knock-model';
import { addressOf, goTo } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { TextField } from '../../parts/controls/form-fields';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { ImpactField } from '../../parts/tonight/impact-field';
import { LookQuestion } from '../../parts/tonight/look-question';
import { cautionsWords } from '../../words/fall/cautions-words';
import { knockWords, lookWords } from '../../words/fall/knock-words';
import { tonightWords } from '../../words/fall/tonight-words';
import { listWords } from '../../words/list-words';
import { words } from '../../words/words';
import './knock-screen.css';

type Models = Needs<'pan' | 'knock' | 'photos' | 'settings'>;

export function KnockScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Opened models={models} pan={pan} />}</PanGate>;
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
}

function Opened({ models, pan }: Props) {
  const { knock } = models;
  useEffect(() => knock.open(pan.id), [knock, pan.id]);
  const draft = knock.draft.value;
  return draft?.pan === pan.id ? <Check models={models} pan={pan} draft={draft} /> : null;
}

function Check({ models, pan, draft }: Props & { readonly draft: KnockDraft }) {
  const open = lookKinds.findIndex((look) => !draft.answers.has(look));
  const [step, go] = useState(open < 0 ? lookKinds.length : open);
  const look = lookKinds[step];
  const at = Math.min(step + 1, lookKinds.length);
  return (
    <main class="screen knock" data-step={look ?? 'seen'}>
      <header class="top">
        <h1>{knockWords.title}</h1>
        <span>
          {pan.current.fields.name}
          {look && ` · ${knockWords.step(at, lookKinds.length)}`}
        </span>
      </header>
      <p class="hint warn">{knockWords.never}</p>
      <NotKept keeper={models.knock} />
      {look ? (
        <Asking
          knock={models.knock}
          photos={models.photos}
          draft={draft}
          look={look}
          step={step}
          go={go}
          pan={pan}
        />
      ) : (
        <Seen
          knock={models.knock}
          settings={models.settings}
          pan={pan}
          draft={draft}
          onChange={() => go(0)}
        />
      )}
    </main>
  );
}

function Asking({
  knock,
  photos,
  pan,
  draft,
  look,
  step,
  go,
}: Pick<Models, 'knock' | 'photos'> & {
  readonly pan: OpenPan;
  readonly draft: KnockDraft;
  readonly look: LookKind;
  readonly step: number;
  readonly go: (step: number) => void;
}) {
  const answer = draft.answers.get(look) ?? null;
  return (
    <>
      <LookQuestion
        key={look}
        look={look}
        answer={answer}
        photo={draft.photos.get(look) ?? null}
        photos={photos}
        onAnswer={(given) => {
          knock.answer(look, given);
          // A "no" needs no reading: the next question comes at once.
          if (given === 'no') go(step + 1);
        }}
        onPhoto={(bytes) => knock.photo(look, bytes)}
      />
      <footer class="actions">
        {step === 0 ? (
          <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
            {words.back}
          </a>
        ) : (
          <button type="button" onClick={() => go(step - 1)}>
            {knockWords.back}
          </button>
        )}
        {answer !== null && (
          <button type="button" class="main" onClick={() => go(step + 1)}>
            {knockWords.next}
          </button>
        )}
      </footer>
    </>
  );
}

/** What the looks mean for the soft round: it is begun, or must wait, or is not to be begun at all. */
type Onward = 'strike' | 'wait' | 'stop';

function onwardOf({ answers }: KnockDraft, rules: TonightRules): Onward {
  const actions = lookKinds
    .filter((look) => answers.get(look) === 'yes')
    .map((look) => rules[look]);
  if (actions.includes('do-not-play')) return 'stop';
  return actions.includes('wait') ? 'wait' : 'strike';
}

function Seen({
  knock,
  settings,
  pan,
  draft,
  onChange,
}: Pick<Models, 'knock' | 'settings'> & {
  readonly pan: OpenPan;
  readonly draft: KnockDraft;
  readonly onChange: () => void;
}) {
  const yes = lookKinds.filter((look) => draft.answers.get(look) === 'yes');
  const unsure = lookKinds.filter((look) => draft.answers.get(look) === 'unsure');
  const hasNotes = pan.current.fields.layout.drums.some(({ notes }) => notes.length > 0);
  const onward = onwardOf(draft, rulesWith(settings.ruleChanges.value));
  const tonight = { screen: 'tonight', pan: pan.id } as const;
  const title = {
    strike: knockWords.softTitle,
    wait: knockWords.waitTitle,
    stop: knockWords.stopTitle,
  };
  return (
    <div class="seen" data-onward={onward}>
      <h2 class="question">{title[onward]}</h2>
      <ol class="next-steps" aria-label={knockWords.nextTitle}>
        {(onward === 'strike' && !hasNotes
          ? [tonightWords.noDrawing]
          : knockWords.nextSteps[onward]
        ).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <section class="field" aria-labelledby="seen">
        <h2 id="seen">{knockWords.seenTitle}</h2>
        {yes.length === 0 && <p>{knockWords.seenNothing}</p>}
        {yes.length > 0 && (
          <ul class="cautions">
            {yes.map((look) => (
              <li key={look}>
                <b>{lookWords[look].short}</b>. {lookWords[look].toDo}
              </li>
            ))}
          </ul>
        )}
        {unsure.length > 0 && (
          <p>{tonightWords.unsure(listWords(unsure.map((look) => lookWords[look].short)))}</p>
        )}
        <a class="caution" href={addressOf('cautions')}>
          {cautionsWords.more}
        </a>
        <button type="button" onClick={onChange}>
          {knockWords.change}
        </button>
      </section>
      <ImpactField
        layout={pan.current.fields.layout}
        impact={draft.impact}
        onImpact={(impact) => knock.change({ impact })}
      />
      <TextField
        id="knock-remarks"
        label={knockWords.remarks}
        hint={knockWords.remarksHint}
        value={draft.remarks}
        longest={longestOfKnock.remarks}
        onInput={(remarks) => knock.change({ remarks })}
      />
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {words.back}
        </a>
        {onward === 'strike' && hasNotes ? (
          <button
            type="button"
            class="main"
            onClick={() => {
              const round = knock.beginRound(pan);
              if (round !== null) goTo({ screen: 'round', pan: pan.id, round });
            }}
          >
            {knockWords.start}
          </button>
        ) : (
          <button
            type="button"
            class="main"
            onClick={() => void knock.keep().then(() => goTo(tonight))}
          >
            {onward === 'wait' ? knockWords.keepAndWait : knockWords.keep}
          </button>
        )}
      </footer>
    </div>
  );
}
