// The settings about hammering: suggestions, which only those get who have confirmed on the bench, and the limits for a professional.
import { useState } from 'preact/hooks';
import { farthestRange, usualProfessionalLimits } from '../../../domain/advice/professional-limits';
import { cents } from '../../../domain/tuning/units';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { addressOf } from '../../frame/route';
import { adviceWords } from '../../words/measuring/advice-words';
import { TextField, typedNumber } from '../controls/form-fields';

export function HammeringForm({
  settings,
}: {
  readonly settings: Pick<SettingsModel, 'bench' | 'set'>;
}) {
  const { isTrained, suggestsBlows, professional } = settings.bench.value;
  const [entered, setEntered] = useState<string | null>(null);
  const [isBad, setIsBad] = useState(false);
  if (!isTrained) {
    return (
      <section class="field">
        <h2>{adviceWords.settingsTitle}</h2>
        <p class="hint">{adviceWords.settingsWhy}</p>
        <MovesLink />
      </section>
    );
  }
  return (
    <section class="field">
      <h2>{adviceWords.settingsTitle}</h2>
      <MovesLink />
      <Tick
        label={adviceWords.suggests}
        checked={suggestsBlows}
        onChange={(value) => settings.set({ suggestsBlows: value })}
      />
      <Tick
        label={adviceWords.trained}
        checked={isTrained}
        onChange={(value) => settings.set({ isTrained: value })}
      />
      <h2>{adviceWords.limitsTitle}</h2>
      <TextField
        id="farthest"
        label={adviceWords.farthest}
        value={entered ?? String(professional.farthest)}
        hint={isBad ? adviceWords.farthestBad : null}
        isBad={isBad}
        inputMode="decimal"
        onInput={(text) => {
          setEntered(text);
          const value = typedNumber(text);
          const { least, most } = farthestRange;
          const isGood =
            value !== null && Number.isInteger(value) && value >= least && value <= most;
          setIsBad(!isGood);
          if (isGood) settings.set({ professional: { ...professional, farthest: cents(value) } });
        }}
      />
      <Tick
        label={adviceWords.withoutOctave}
        checked={professional.withoutOctave}
        onChange={(withoutOctave) =>
          settings.set({ professional: { ...professional, withoutOctave } })
        }
      />
      <Tick
        label={adviceWords.falling}
        checked={professional.falling}
        onChange={(falling) => settings.set({ professional: { ...professional, falling } })}
      />
      <Tick
        label={adviceWords.choked}
        checked={professional.shortestDecay > 0}
        onChange={(isOn) =>
          settings.set({
            professional: {
              ...professional,
              shortestDecay: isOn ? usualProfessionalLimits.shortestDecay : 0,
            },
          })
        }
      />
    </section>
  );
}

const MovesLink = () => (
  <a class="caution" href={addressOf('what-moves')}>
    {adviceWords.moves}
  </a>
);

function Tick({
  label,
  checked,
  onChange,
}: {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (value: boolean) => void;
}) {
  return (
    <label class="choice">
      <input
        type="checkbox"
        checked={checked}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      {label}
    </label>
  );
}
