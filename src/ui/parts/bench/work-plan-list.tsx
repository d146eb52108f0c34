// The order of work on a pan: proposed after a round, changed by the user, with what is checked in between.

import { recheckList, workSteps } from '../../../domain/bench/work-order';
import type { WorkPlan } from '../../../domain/bench/work-plan';
import { noteMoved, planNow, proposedWork, withoutNote } from '../../../domain/bench/work-plan';
import type { PanLayout } from '../../../domain/pans/layout';
import type { DatedPanNow, NoteNow } from '../../../domain/rounds/pan-now';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { addressOf } from '../../frame/route';
import { noteListWords } from '../../words/list-words';
import { workPlanWords } from '../../words/measuring/bench-words';
import { partialsLine } from '../../words/result-words';
import { standingWords } from '../../words/standing-words';
import './work-plan-list.css';

/** Only for those who are trained: it is about hammering. */
export function WorkPlanList({
  settings,
  pan,
  result,
}: {
  readonly settings: Pick<SettingsModel, 'bench' | 'limits' | 'set'>;
  readonly pan: OpenPan;
  readonly result: DatedPanNow;
}) {
  const { isTrained, work } = settings.bench.value;
  if (!isTrained) return null;
  const { plan: proposed, strikeFirst } = proposedWork(pan.id, result, settings.limits.value);
  const plan = planNow(work, proposed);
  if (proposed.notes.length + strikeFirst.length === 0) return null;
  const found = new Map(result.notes.map((each) => [each.note, each]));
  const set = (next: WorkPlan) => settings.set({ work: next });
  const { layout } = pan.current.fields;
  const steps = workSteps(layout, plan.notes);
  const checksAfter = (note: MidiNote): readonly MidiNote[] => {
    const at = steps.findIndex((step) => step.kind === 'work' && step.note === note);
    const rest = steps.slice(at + 1);
    const end = rest.findIndex((step) => step.kind === 'work');
    return (end < 0 ? rest : rest.slice(0, end)).map((step) => step.note);
  };
  return (
    <details class="work-plan">
      <summary>
        {plan.notes.length === 0
          ? workPlanWords.first(noteListWords(strikeFirst))
          : workPlanWords.title(noteListWords(plan.notes.slice(0, 3)), plan.notes.length)}
      </summary>
      {strikeFirst.length > 0 && (
        <>
          <p>{workPlanWords.strikeFirst}</p>
          <ul>
            {strikeFirst.map((note) => (
              <li key={note} data-strike-first={note}>
                <a class="button" href={addressOf({ screen: 'bench', pan: pan.id, note })}>
                  {displayName(note)}
                </a>
                <span class="aside">
                  {found.get(note)?.work === 'not-measured'
                    ? workPlanWords.strikeAgain
                    : workPlanWords.strike}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {plan.notes.length > 0 && <p class="aside">{workPlanWords.why}</p>}
      <ol>
        {plan.notes.map((note, k) => (
          <li key={note} data-work={note}>
            <a
              class="button"
              href={addressOf({ screen: 'bench', pan: pan.id, note })}
              onClick={() => set(plan)}
            >
              {displayName(note)}
            </a>
            <Change
              label={workPlanWords.earlier(displayName(note))}
              sign="↑"
              disabled={k === 0}
              onClick={() => set(noteMoved(plan, note, -1))}
            />
            <Change
              label={workPlanWords.later(displayName(note))}
              sign="↓"
              disabled={k === plan.notes.length - 1}
              onClick={() => set(noteMoved(plan, note, 1))}
            />
            <Change
              label={workPlanWords.leaveOut(displayName(note))}
              sign="×"
              disabled={false}
              onClick={() => set(withoutNote(plan, note))}
            />
            <span class="aside what">{wrongWords(found.get(note))}</span>
            <span class="aside">{disturbsWords(layout, note)}</span>
            {checksAfter(note).length > 0 && (
              <span class="aside">{workPlanWords.thenCheck(noteListWords(checksAfter(note)))}</span>
            )}
          </li>
        ))}
      </ol>
      {plan !== proposed && (
        <button type="button" onClick={() => settings.set({ work: null })}>
          {workPlanWords.proposeAgain}
        </button>
      )}
    </details>
  );
}

/** "octave sharp 12: fundamental +1, octave +12, twelfth −3". */
const wrongWords = (note: NoteNow | undefined): string =>
  note?.judged ? `${standingWords(note)}: ${partialsLine(note.judged)}` : '';

/** "may move D5, F♯5; rings with E4". */
function disturbsWords(layout: PanLayout, note: MidiNote): string {
  const disturbed = recheckList(layout, note);
  const those = (kind: (typeof disturbed)[number]['kind']): string =>
    noteListWords(disturbed.filter((each) => each.kind === kind).map((each) => each.note));
  const [neighbours, partners] = [those('neighbour'), those('ring-partner')];
  return [
    neighbours === '' ? '' : workPlanWords.disturbs(neighbours),
    partners === '' ? '' : workPlanWords.ringsWith(partners),
  ]
    .filter((each) => each !== '')
    .join('; ');
}

function Change({
  label,
  sign,
  disabled,
  onClick,
}: {
  readonly label: string;
  readonly sign: string;
  readonly disabled: boolean;
  readonly onClick: () => void;
}) {
  return (
    <button type="button" class="change" aria-label={label} disabled={disabled} onClick={onClick}>
      {sign}
    </button>
  );
}
