// Before a round: how, and how the pan stands; asked once, answered with a thumb.
import { useState } from 'preact/hooks';
import type { RoundWay, Standing } from '../../../domain/records/rack-records';
import { waysToOffer } from '../../../domain/rounds/ways-to-offer';
import type { Announcement } from '../../../domain/settings/settings';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf, goTo } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { Choices, TextField, typedNumber } from '../../parts/controls/form-fields';
import { PanGate } from '../../parts/gates/pan-gate';
import { panWords } from '../../words/pan-words';
import { words } from '../../words/words';

type Models = Needs<'pan' | 'round' | 'announcer' | 'settings'>;

const standings: readonly Standing[] = ['settled', 'unloaded', 'sun'];
const lowestTemperature = -30;
const highestTemperature = 60;

export function BeginScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Begin models={models} pan={pan} />}</PanGate>;
}

function Begin({ models, pan }: { readonly models: Models; readonly pan: OpenPan }) {
  const { round } = models;
  const ways = waysToOffer(pan.records);
  const [way, setWay] = useState<RoundWay>(ways[0] ?? 'guided');
  const [standing, setStanding] = useState<Standing | null>(null);
  const [temperature, setTemperature] = useState('');
  const [isBad, setIsBad] = useState(false);
  const begin = (): void => {
    const degrees = temperature.trim() === '' ? null : typedNumber(temperature);
    const isWrong =
      temperature.trim() !== '' &&
      (degrees === null || degrees < lowestTemperature || degrees > highestTemperature);
    setIsBad(isWrong);
    if (isWrong) return;
    const id = round.begin({
      pan: pan.id,
      fields: pan.current.fields,
      way,
      conditions: { standing, temperature: degrees },
      earlier: [...pan.readings, ...pan.outside],
    });
    goTo({ screen: 'round', pan: pan.id, round: id });
  };
  return (
    <main class="screen">
      <header class="top">
        <h1>{panWords.beginTitle}</h1>
        <span>{pan.current.fields.name}</span>
      </header>
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          begin();
        }}
      >
        <Choices
          name="way"
          legend={panWords.way}
          values={ways}
          labels={panWords.ways}
          chosen={way}
          onChoose={setWay}
        />
        <Choices
          name="standing"
          legend={panWords.standing}
          values={standings}
          labels={panWords.standings}
          chosen={standing}
          onChoose={setStanding}
        >
          {standing !== null && standing !== 'settled' && (
            <p class="hint warn" role="status">
              {panWords.notSettled}
            </p>
          )}
        </Choices>
        <TextField
          id="temperature"
          label={panWords.temperature}
          value={temperature}
          inputMode="decimal"
          isBad={isBad}
          hint={isBad ? panWords.temperatureBad : panWords.temperatureHint}
          onInput={setTemperature}
        />
        {way !== 'quick' && <Announcing announcer={models.announcer} settings={models.settings} />}
        <footer class="actions">
          <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
            {words.back}
          </a>
          <button type="submit" class="main">
            {panWords.begin}
          </button>
        </footer>
      </form>
    </main>
  );
}

function Announcing({ announcer, settings }: Pick<Models, 'announcer' | 'settings'>) {
  const kinds: readonly Announcement[] = ['nothing', 'beep', 'voice'];
  const chosen = settings.announcement.value;
  return (
    <Choices
      name="announcement"
      legend={panWords.announcement}
      values={kinds}
      labels={panWords.announcements}
      chosen={chosen}
      onChoose={(announcement) => settings.set({ announcement })}
    >
      {chosen === 'voice' && !announcer.hasVoice() && (
        <p class="hint warn" role="status">
          {panWords.noVoice}
        </p>
      )}
    </Choices>
  );
}
