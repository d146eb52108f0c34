// Band pitch, light or dark, what is judged how, and kept sound.
import { useEffect, useState } from 'preact/hooks';
import { highestA4, lowestA4 } from '../../../domain/tuning/equal-temperament';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { Choices } from '../../parts/controls/form-fields';
import { PartsList } from '../../parts/controls/parts-list';
import { HammeringForm } from '../../parts/settings/hammering-form';
import { HandKeyFields } from '../../parts/settings/hand-key-fields';
import { LimitsForm } from '../../parts/settings/limits-form';
import { sizeWords } from '../../words/keeping/backup-words';
import { settingsWords } from '../../words/keeping/settings-words';
import { words } from '../../words/words';

type Models = Needs<'settings' | 'listen' | 'rack' | 'headset' | 'announcer'>;

const references = ['band', 'pan'] as const;
const themes = ['system', 'light', 'dark'] as const;

export function SettingsScreen({ models }: { readonly models: Models }) {
  const { settings, listen, rack } = models;
  useEffect(() => void rack.load(), [rack]);
  const [entered, setEntered] = useState<string | null>(null);
  const [isBad, setIsBad] = useState(false);
  return (
    <main class="screen">
      <header class="top">
        <h1>{words.settings}</h1>
      </header>
      <PartsList />
      <form
        class="field"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          const text = (entered ?? String(settings.a4.value)).trim();
          const isGood =
            /^\d+([.,]\d+)?$/.test(text) && settings.setA4(Number(text.replace(',', '.')));
          setIsBad(!isGood);
          if (!isGood) return;
          setEntered(null);
          listen.retune();
        }}
      >
        <label for="a4">{settingsWords.a4Label}</label>
        <div class="pair">
          <input
            id="a4"
            inputMode="decimal"
            autocomplete="off"
            min={lowestA4}
            max={highestA4}
            value={entered ?? String(settings.a4.value)}
            aria-invalid={isBad}
            aria-describedby="a4-note"
            onInput={(event) => setEntered(event.currentTarget.value)}
          />
          <button type="submit">{settingsWords.a4Set}</button>
        </div>
        <p id="a4-note" class={isBad ? 'hint warn' : 'hint'} role="status">
          {isBad ? settingsWords.a4Bad : settingsWords.a4Now(String(settings.a4.value))}
        </p>
      </form>
      <fieldset class="field">
        <legend>{settingsWords.themeLabel}</legend>
        {themes.map((theme) => (
          <label key={theme} class="choice">
            <input
              type="radio"
              name="theme"
              checked={settings.theme.value === theme}
              onChange={() => settings.set({ theme })}
            />
            {settingsWords.themes[theme]}
          </label>
        ))}
      </fieldset>
      <Choices
        name="reference"
        legend={settingsWords.reference}
        values={references}
        labels={settingsWords.references}
        chosen={settings.reference.value}
        onChoose={(reference) => settings.set({ reference })}
      />
      <LimitsForm settings={settings} />
      <HandKeyFields settings={settings} headset={models.headset} announcer={models.announcer} />
      <HammeringForm settings={settings} />
      <h2>{settingsWords.soundTitle}</h2>
      <label class="choice">
        <input
          type="checkbox"
          checked={settings.keepsSound.value}
          onChange={(event) => settings.set({ keepsSound: event.currentTarget.checked })}
        />
        {settingsWords.keepSound}
      </label>
      <p class="hint">{settingsWords.soundKept(sizeWords(rack.soundBytes.value))}</p>
      <a class="caution" href={addressOf('cautions')}>
        {words.cautionLink}
      </a>
      {settings.isNotKept.value && <p class="hint warn">{words.notKept}</p>}
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}
