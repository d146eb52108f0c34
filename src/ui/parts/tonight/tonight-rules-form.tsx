// The table of rules, as the user may change it.

import { useState } from 'preact/hooks';
import {
  isRuleValue,
  type LookAction,
  type LossAction,
  type NoteAction,
  rulesWith,
  type TonightRule,
  tonightRuleNames,
  tonightRuleTable,
} from '../../../domain/knock-check/tonight-rules';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { ruleWords } from '../../words/fall/tonight-rule-words';
import { tonightWords } from '../../words/fall/tonight-words';
import { TextField, typedNumber } from '../controls/form-fields';

const actionWords: Readonly<Record<LookAction | NoteAction | LossAction, string>> = {
  ...tonightWords.lookActions,
  ...tonightWords.noteActions,
  ...tonightWords.lossActions,
};

export function TonightRulesForm({
  settings,
}: {
  readonly settings: Pick<SettingsModel, 'ruleChanges' | 'set'>;
}) {
  const changes = settings.ruleChanges.value;
  const rules = rulesWith(changes);
  const change = (name: TonightRule, value: string | number): void => {
    if (isRuleValue(name, value)) {
      settings.set({ tonightRules: { ...changes, [name]: value } });
    }
  };
  return (
    <details class="how-sure tonight-rules">
      <summary>{tonightWords.rules}</summary>
      <div class="form">
        <p class="hint">{tonightWords.rulesWhy}</p>
        {tonightRuleNames.map((name) => (
          <Rule
            key={name}
            name={name}
            value={rules[name]}
            onChange={(value) => change(name, value)}
          />
        ))}
        <button type="button" onClick={() => settings.set({ tonightRules: {} })}>
          {tonightWords.rulesUsual}
        </button>
      </div>
    </details>
  );
}

function Rule({
  name,
  value,
  onChange,
}: {
  readonly name: TonightRule;
  readonly value: string | number;
  readonly onChange: (value: string | number) => void;
}) {
  const rule = tonightRuleTable[name];
  if (rule.kind === 'number') {
    return <NumberRule name={name} value={Number(value)} rule={rule} onChange={onChange} />;
  }
  const choices: readonly (LookAction | NoteAction | LossAction)[] = rule.choices;
  if (choices.length === 1) {
    return (
      <p>
        {ruleWords[name]}: <b>{actionWords[rule.usual]}</b>.
      </p>
    );
  }
  return (
    <label class="field">
      <span>{ruleWords[name]}</span>
      <select value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {actionWords[choice]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** A number counts as soon as it is one that the rule allows. */
function NumberRule({
  name,
  value,
  rule: { least, most },
  onChange,
}: {
  readonly name: TonightRule;
  readonly value: number;
  readonly rule: { readonly least: number; readonly most: number };
  readonly onChange: (value: number) => void;
}) {
  const [typed, type] = useState<string | null>(null);
  const number = typed === null ? value : typedNumber(typed);
  const isBad = number === null || !isRuleValue(name, number);
  return (
    <TextField
      id={`rule-${name}`}
      label={ruleWords[name]}
      inputMode="decimal"
      // What was set back elsewhere is shown as it is.
      value={typed !== null && (isBad || number === value) ? typed : String(value)}
      isBad={isBad}
      hint={isBad ? tonightWords.rulesBad(least, most) : null}
      onInput={(text) => {
        type(text);
        const wanted = typedNumber(text);
        if (wanted !== null && isRuleValue(name, wanted)) onChange(wanted);
      }}
    />
  );
}
