// The tuner's answers: what was done to the pan and when the next visit is. A tuning starts a new baseline.

import { useRef, useState } from 'preact/hooks';
import { longestOfVisit } from '../../../domain/records/longest-texts';
import { standingStopgaps } from '../../../domain/records/standing/standing-stopgaps';
import { tunerVisits } from '../../../domain/rounds/tuner-baseline';
import type { OpenPan, PanModel } from '../../../state/pan/pan-model';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { momentText } from '../../frame/typed-moment';
import { MomentField, TextField } from '../../parts/controls/form-fields';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { noteListWords } from '../../words/list-words';
import { words } from '../../words/words';
import '../../parts/drawing/note-rows.css';
import { dayWords } from '../../words/day-words';

import { tunedWords, visitTitle } from '../../words/tuner/tuned-words';
import { type VisitDraft, type VisitField, visitAnswers } from './visit-answers';

type Models = Needs<'pan' | 'now'>;

export function TunedScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Tuned models={models} pan={pan} />}</PanGate>;
}

function Tuned({ models, pan }: { readonly models: Models; readonly pan: OpenPan }) {
  const empty = () => ({
    visitedAt: momentText(models.now()),
    who: '',
    done: '',
    remarks: '',
    nextVisit: '',
  });
  const [draft, setDraft] = useState<VisitDraft>(empty);
  const [isTuned, setTuned] = useState(true);
  const [bad, setBad] = useState<VisitField | null>(null);
  const [isKept, setKept] = useState(false);
  // A second tap, before or after the first one is on disk, keeps no second visit: something must be typed first.
  const isTaken = useRef(false);
  const stopgaps = [...standingStopgaps(pan.records).keys()].sort((low, high) => low - high);
  const field = (name: VisitField) => ({
    id: `visit-${name}`,
    label: tunedWords.fields[name],
    value: draft[name],
    isBad: bad === name,
    onInput: (value: string) => {
      isTaken.current = false;
      setKept(false);
      setDraft({ ...draft, [name]: value });
    },
  });
  const text = (name: keyof typeof longestOfVisit) => ({
    ...field(name),
    longest: longestOfVisit[name],
  });
  const keep = () => {
    if (isTaken.current) return;
    const answers = visitAnswers(draft, isTuned, models.now());
    if (typeof answers === 'string') {
      setBad(answers);
      return;
    }
    isTaken.current = true;
    setBad(null);
    setDraft(empty());
    void models.pan.keepVisit(answers).then(() => setKept(true));
  };
  return (
    <main class="screen tuned-page">
      <header class="top">
        <h1>{tunedWords.title}</h1>
        <span>{pan.current.fields.name}</span>
      </header>
      <p>{tunedWords.why}</p>
      {isKept && (
        <div class="hint" role="status">
          <p>{tunedWords.kept}</p>
          <a class="button" href={addressOf({ screen: 'begin', pan: pan.id })}>
            {tunedWords.startRound}
          </a>
        </div>
      )}
      {stopgaps.length > 0 && (
        <p class="hint warn">{tunedWords.stopgaps(noteListWords(stopgaps))}</p>
      )}
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <MomentField
          {...field('visitedAt')}
          type="datetime-local"
          hint={bad === 'visitedAt' ? tunedWords.momentBad : null}
        />
        <TextField {...text('who')} />
        <TextField {...text('done')} long />
        <TextField {...text('remarks')} long />
        <MomentField
          {...field('nextVisit')}
          type="date"
          hint={bad === 'nextVisit' ? tunedWords.dayBad : tunedWords.nextHint}
        />
        <label class="choice">
          <input
            type="checkbox"
            checked={isTuned}
            onChange={({ currentTarget }) => {
              isTaken.current = false;
              setKept(false);
              setTuned(currentTarget.checked);
            }}
          />
          {tunedWords.isTuned}
        </label>
        <NotKept keeper={models.pan} />
        <Visits model={models.pan} pan={pan} />
        <footer class="actions">
          <a class="button" href={addressOf({ screen: 'sheet', pan: pan.id })}>
            {words.back}
          </a>
          <button type="submit" class="main" disabled={isKept}>
            {tunedWords.keep}
          </button>
        </footer>
      </form>
    </main>
  );
}

function Visits({
  model,
  pan,
}: {
  readonly model: Pick<PanModel, 'erase'>;
  readonly pan: OpenPan;
}) {
  const visits = tunerVisits(pan.records);
  return (
    <section>
      <h2>{tunedWords.visits}</h2>
      {visits.length === 0 && <p class="quiet">{tunedWords.none}</p>}
      <ul class="plain-rows">
        {visits.map((visit) => (
          <li key={visit.id} class="hint">
            <p>
              <b>{visitTitle(visit)}</b>
            </p>
            {visit.done !== '' && <p>{visit.done}</p>}
            {visit.remarks !== '' && <p>{visit.remarks}</p>}
            <button
              type="button"
              aria-label={tunedWords.removeOf(dayWords(visit.visitedAt))}
              onClick={() => void model.erase(visit.id, { kind: 'visit' })}
            >
              {tunedWords.remove}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
