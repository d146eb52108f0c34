// The order of work on a pan: proposed after a round, changed by the user, with what is checked in between.

import { workSteps } from '../../../domain/bench/work-order';
import type { WorkPlan } from '../../../domain/bench/work-plan';
import { noteMoved, planNow, proposedPlan, withoutNote } from '../../../domain/bench/work-plan';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { addressOf } from '../../frame/route';
import { noteListWords } from '../../words/list-words';
import { workPlanWords } from '../../words/measuring/bench-words';
import './work-plan-list.css';

/** Only for those who are trained: it is about hammering. */
export function WorkPlanList({
  settings,
  pan,
  result,
}: {
  readonly settings: Pick<SettingsModel, 'bench' | 'limits' | 'set'>;
  readonly pan: OpenPan;
  readonly result: RoundResult;
}) {
  const { isTrained, work } = settings.bench.value;
  if (!isTrained) return null;
  const proposed = proposedPlan(pan.id, result, settings.limits.value);
  const plan = planNow(work, proposed);
  if (proposed.notes.length === 0) return null;
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
        {workPlanWords.title(noteListWords(plan.notes.slice(0, 3)), plan.notes.length)}
      </summary>
      <p class="aside">{workPlanWords.why}</p>
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
