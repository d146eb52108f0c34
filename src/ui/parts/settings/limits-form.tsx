// The user's tolerances: two ready sets, or numbers of one's own.
import { useState } from 'preact/hooks';
import { isToleranceSet } from '../../../domain/tuning/is-tolerance-set';
import {
  fineTolerances,
  type Limits,
  type ToleranceSet,
  toleranceSteps,
  usualTolerances,
} from '../../../domain/tuning/tolerances';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { settingsWords } from '../../words/keeping/settings-words';
import { TextField, typedNumber } from '../controls/form-fields';

const kinds: readonly (keyof Limits)[] = ['main', 'third'];

type Typed = Readonly<Record<string, string>>;

export function LimitsForm({
  settings,
}: {
  readonly settings: Pick<SettingsModel, 'limits' | 'set'>;
}) {
  const limits = settings.limits.value;
  const [typed, type] = useState<Typed>({});
  const [isBad, setIsBad] = useState(false);
  const take = (set: ToleranceSet): void => {
    type({});
    setIsBad(false);
    settings.set({ limits: set });
  };
  return (
    <section class="form">
      <h2>{settingsWords.limits}</h2>
      <p class="hint">{settingsWords.limitsWhy}</p>
      <div class="pair">
        <button
          type="button"
          aria-pressed={isSame(limits, usualTolerances)}
          onClick={() => take(usualTolerances)}
        >
          {settingsWords.usual}
        </button>
        <button
          type="button"
          aria-pressed={isSame(limits, fineTolerances)}
          onClick={() => take(fineTolerances)}
        >
          {settingsWords.fine}
        </button>
      </div>
      <details class="how-sure">
        <summary>{settingsWords.own}</summary>
        <form
          class="form"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            const wanted = withTyped(limits, typed);
            if (wanted) take(wanted);
            else setIsBad(true);
          }}
        >
          {toleranceSteps.flatMap((step) =>
            kinds.map((kind) => {
              const id = `${step}-${kind}`;
              return (
                <TextField
                  key={id}
                  id={id}
                  label={settingsWords.limitOf(settingsWords.steps[step], kind === 'third')}
                  inputMode="decimal"
                  value={typed[id] ?? String(limits[step][kind])}
                  isBad={isBad}
                  onInput={(value) => type({ ...typed, [id]: value })}
                />
              );
            }),
          )}
          {isBad && (
            <p class="hint warn" role="alert">
              {settingsWords.bad}
            </p>
          )}
          <button type="submit">{settingsWords.set}</button>
        </form>
      </details>
    </section>
  );
}

const isSame = (one: ToleranceSet, other: ToleranceSet): boolean =>
  toleranceSteps.every((step) => kinds.every((kind) => one[step][kind] === other[step][kind]));

/** The limits with what was typed, or null if they cannot be. */
function withTyped(limits: ToleranceSet, typed: Typed): ToleranceSet | null {
  const steps = toleranceSteps.map((step) => {
    const values = kinds.map((kind) => {
      const text = typed[`${step}-${kind}`];
      return [kind, text === undefined ? limits[step][kind] : typedNumber(text)] as const;
    });
    return [step, Object.fromEntries(values)] as const;
  });
  const wanted: unknown = { ...limits, ...Object.fromEntries(steps) };
  return isToleranceSet(wanted) ? wanted : null;
}
