// What the set needs: keys, single notes, or saved tunes.

import { useState } from 'preact/hooks';
import {
  longestTuneName,
  mostTunes,
  noNeeds,
  type PitchClass,
  type SetNeeds,
} from '../../../domain/knock-check/saved-tunes';
import { neededClasses } from '../../../domain/knock-check/set-needs';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { className, keyName, tonightWords } from '../../words/fall/tonight-words';
import { listWords } from '../../words/list-words';
import { TextField } from '../controls/form-fields';
import { PitchToggles } from './pitch-toggles';
import './set-needs-form.css';

type NeedsSettings = Pick<SettingsModel, 'setNeeds' | 'tunes' | 'set'>;

export function SetNeedsForm({ settings }: { readonly settings: NeedsSettings }) {
  const needs = settings.setNeeds.value;
  const tunes = settings.tunes.value;
  const needed = neededClasses(needs, tunes);
  const names = [...(needed ?? [])].sort((one, other) => one - other);
  // Open until something is chosen, but never closed under a finger.
  const [wasOpen] = useState(needed === null);
  const change = (changes: Partial<SetNeeds>): void =>
    settings.set({ setNeeds: { ...needs, ...changes } });
  return (
    <details class="how-sure" open={wasOpen}>
      <summary>
        <b>{tonightWords.needs}</b>{' '}
        {needed === null
          ? tonightWords.needsAll
          : tonightWords.needsSome(listWords(names.map(className)))}
      </summary>
      <div class="form">
        <PitchToggles
          legend={tonightWords.keys}
          chosen={needs.keys}
          name={keyName}
          label={(key) => tonightWords.keyLabel(keyName(key))}
          onToggle={(keys) => change({ keys })}
        />
        <p class="aside">{tonightWords.keysHint}</p>
        <PitchToggles
          legend={tonightWords.notes}
          chosen={needs.notes}
          name={className}
          onToggle={(notes) => change({ notes })}
        />
        <Tunes settings={settings} onChange={change} />
        {needed !== null && <SaveTune settings={settings} notes={names} />}
        {needed !== null && (
          <button type="button" onClick={() => settings.set({ setNeeds: noNeeds })}>
            {tonightWords.clear}
          </button>
        )}
      </div>
    </details>
  );
}

function Tunes({
  settings,
  onChange,
}: {
  readonly settings: NeedsSettings;
  readonly onChange: (changes: Partial<SetNeeds>) => void;
}) {
  const tunes = settings.tunes.value;
  const chosen = settings.setNeeds.value.tunes;
  if (tunes.length === 0) return null;
  return (
    <fieldset class="field">
      <legend>{tonightWords.tunes}</legend>
      {tunes.map(({ name }) => (
        <div class="tune" key={name}>
          <label class="choice">
            <input
              type="checkbox"
              checked={chosen.includes(name)}
              onChange={(event) =>
                onChange({
                  tunes: event.currentTarget.checked
                    ? [...chosen, name]
                    : chosen.filter((each) => each !== name),
                })
              }
            />
            {name}
          </label>
          <button
            type="button"
            onClick={() => {
              settings.set({ tunes: tunes.filter((tune) => tune.name !== name) });
              onChange({ tunes: chosen.filter((each) => each !== name) });
            }}
          >
            {tonightWords.removeTune(name)}
          </button>
        </div>
      ))}
    </fieldset>
  );
}

/** The chosen notes under a name; they stay chosen. */
function SaveTune({
  settings,
  notes,
}: {
  readonly settings: NeedsSettings;
  readonly notes: readonly PitchClass[];
}) {
  const [name, setName] = useState('');
  const [isBad, setIsBad] = useState(false);
  const tunes = settings.tunes.value;
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const plain = name.trim();
        const isTaken = plain === '' || tunes.some((tune) => tune.name === plain);
        setIsBad(isTaken);
        if (isTaken || tunes.length >= mostTunes) return;
        settings.set({ tunes: [...tunes, { name: plain, notes }] });
        setName('');
      }}
    >
      <TextField
        id="tune-name"
        label={tonightWords.tuneName}
        value={name}
        longest={longestTuneName}
        isBad={isBad}
        hint={isBad ? tonightWords.tuneNameBad : null}
        onInput={setName}
      />
      <button type="submit">{tonightWords.saveTune}</button>
    </form>
  );
}
