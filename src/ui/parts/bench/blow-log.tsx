// Logging a set of blows: one tap on the note. Side and firmness stay as they were last time.
import { useState } from 'preact/hooks';
import { isAwaiting, isOpened, newestStep, setToLog } from '../../../domain/bench/bench-course';
import {
  type BlowFirmness,
  type BlowPlace,
  type BlowSide,
  blowFirmnesses,
  blowSides,
} from '../../../domain/records/blow-places';
import type { BenchModel } from '../../../state/bench/bench-model';
import type { OpenBench } from '../../../state/bench/open-bench';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { adviceWords } from '../../words/measuring/advice-words';
import { benchWords, loggedWords } from '../../words/measuring/bench-words';
import { BlowSpots } from './blow-spots';

export function BlowLog({
  model,
  settings,
  bench,
}: {
  readonly model: Pick<BenchModel, 'suggested' | 'log' | 'noBlows'>;
  readonly settings: Pick<SettingsModel, 'bench' | 'set'>;
  readonly bench: OpenBench;
}) {
  const { lastBlows, repeatsBlows } = settings.bench.value;
  const [side, setSide] = useState<BlowSide>(lastBlows?.side ?? 'above');
  const [firmness, setFirmness] = useState<BlowFirmness>(lastBlows?.firmness ?? 'light');
  const { course } = bench;
  const which = setToLog(course);
  const logged = which === 'unheard' ? null : (newestStep(course).blows?.logged ?? null);
  const suggested = model.suggested.value;
  if (!isOpened(course)) return <p class="hint">{benchWords.logFirst}</p>;
  const log = (place: BlowPlace) => model.log({ place, side, firmness });
  return (
    <section class="blow-log" aria-label={benchWords.blows} data-logged={logged?.place ?? ''}>
      <h2>{benchWords.logTitle[which]}</h2>
      {logged && (
        <p class="hint" role="status">
          <b>{benchWords.logged}:</b> {loggedWords(logged)}
        </p>
      )}
      <div class="pair">
        {lastBlows && !logged && (
          <button type="button" onClick={() => model.log(lastBlows)}>
            <span>
              {benchWords.asLast}: {loggedWords(lastBlows)}
            </span>
          </button>
        )}
        {suggested && !logged && (
          <button
            type="button"
            onClick={() => {
              const { place, side, firmness } = suggested;
              model.log({ place, side, firmness });
            }}
          >
            {adviceWords.asSuggested}
          </button>
        )}
      </div>
      <p class="aside">{benchWords.logHint}</p>
      <BlowSpots chosen={logged?.place ?? null} onChoose={log} />
      <Two
        title={benchWords.sidesTitle}
        values={blowSides}
        labels={benchWords.sides}
        chosen={logged?.side ?? side}
        onChoose={(value) => {
          setSide(value);
          if (logged) model.log({ ...logged, side: value });
        }}
      />
      <p class="aside">{benchWords.aboveIs}</p>
      <Two
        title={benchWords.firmnessTitle}
        values={blowFirmnesses}
        labels={benchWords.firmnesses}
        chosen={logged?.firmness ?? firmness}
        onChoose={(value) => {
          setFirmness(value);
          if (logged) model.log({ ...logged, firmness: value });
        }}
      />
      <label class="choice">
        <input
          type="checkbox"
          checked={repeatsBlows}
          onChange={(event) => settings.set({ repeatsBlows: event.currentTarget.checked })}
        />
        {benchWords.repeats}
      </label>
      {isAwaiting(course) && (
        <button type="button" onClick={model.noBlows}>
          {benchWords.noBlows}
        </button>
      )}
    </section>
  );
}

/** A choice of two, with the chosen one pressed. */
export function Two<Value extends string>({
  title,
  values,
  labels,
  chosen,
  onChoose,
  isFixed = false,
}: {
  readonly title: string;
  readonly values: readonly Value[];
  readonly labels: Readonly<Record<Value, string>>;
  readonly chosen: Value;
  readonly onChoose: (value: Value) => void;
  readonly isFixed?: boolean;
}) {
  return (
    <fieldset class="pair blow-choice" disabled={isFixed}>
      <legend class="only-spoken">{title}</legend>
      {values.map((value) => (
        <button
          key={value}
          type="button"
          aria-pressed={chosen === value}
          onClick={() => onChoose(value)}
        >
          {labels[value]}
        </button>
      ))}
    </fieldset>
  );
}
