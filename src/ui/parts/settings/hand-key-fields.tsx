// Settings for busy hands: a key is bound by pressing it.
import { useLayoutEffect, useState } from 'preact/hooks';
import type { Headset } from '../../../domain/ports/headset-port';
import type { Announcer } from '../../../domain/ports/sound-ports';
import { canBeBound, withKey } from '../../../domain/settings/bind-hand-keys';
import {
  type HandAction,
  type HandKey,
  handActions,
  settledSigns,
} from '../../../domain/settings/hands-settings';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { watchKeys } from '../../frame/watch-keys';
import { handsWords, keyWords } from '../../words/measuring/hands-words';
import { Choices } from '../controls/form-fields';

export function HandKeyFields({
  settings,
  headset,
  announcer,
}: {
  readonly settings: Pick<SettingsModel, 'hands' | 'set'>;
  readonly headset: Headset;
  readonly announcer: Pick<Announcer, 'hasVoice'>;
}) {
  const [waiting, setWaiting] = useState<HandAction | null>(null);
  const [isRefused, setIsRefused] = useState(false);
  const { handKeys, speaksVerdict, settledSign } = settings.hands.value;
  // Before anything is painted: whoever sees that a key is awaited may press one at once.
  useLayoutEffect(() => {
    if (waiting === null) return;
    const press = (key: HandKey): boolean => {
      // Whoever goes on to the next button does not want a key any more.
      if (key.kind === 'key' && (key.code === 'Tab' || key.code === 'Escape')) {
        setWaiting(null);
        return key.code === 'Escape';
      }
      const isGood = canBeBound(key);
      setIsRefused(!isGood);
      if (!isGood) return true;
      settings.set({ handKeys: withKey(settings.hands.value.handKeys, waiting, key) });
      setWaiting(null);
      return true;
    };
    const endKeys = watchKeys(window, press);
    const endHeadset = headset.watch((button) => void press({ kind: 'headset', button }));
    return () => {
      endKeys();
      endHeadset();
    };
  }, [waiting, settings, headset]);
  const hasVoice = announcer.hasVoice();
  return (
    <>
      <section class="field" aria-labelledby="hand-keys">
        <h2 id="hand-keys">{handsWords.title}</h2>
        <p class="hint">{handsWords.why}</p>
        {handActions.map((action) => {
          const key = handKeys[action];
          const name = handsWords.actions[action];
          return (
            <div key={action} class="field">
              <p data-key-for={action}>
                {handsWords.bound(name, key === null ? handsWords.none : keyWords(key))}
              </p>
              <div class="pair">
                <button
                  type="button"
                  aria-pressed={waiting === action}
                  onClick={() => {
                    setIsRefused(false);
                    setWaiting(waiting === action ? null : action);
                  }}
                >
                  {waiting === action ? handsWords.cancel : handsWords.set(name)}
                </button>
                {key !== null && (
                  <button
                    type="button"
                    onClick={() => settings.set({ handKeys: withKey(handKeys, action, null) })}
                  >
                    {handsWords.takeAway(name)}
                  </button>
                )}
              </div>
            </div>
          );
        })}
        <p class={isRefused ? 'hint warn' : 'hint'} role="status">
          {waiting === null ? handsWords.only : isRefused ? handsWords.refused : handsWords.waiting}
        </p>
      </section>
      <label class="choice">
        <input
          type="checkbox"
          checked={speaksVerdict}
          disabled={!hasVoice}
          onChange={(event) => settings.set({ speaksVerdict: event.currentTarget.checked })}
        />
        {handsWords.voice}
      </label>
      {!hasVoice && <p class="hint">{handsWords.noVoice}</p>}
      <Choices
        name="settled-sign"
        legend={handsWords.settledSign}
        values={settledSigns}
        labels={handsWords.settledSigns}
        chosen={settledSign}
        onChoose={(settledSign) => settings.set({ settledSign })}
      >
        <p class="hint">{handsWords.settledWhy}</p>
      </Choices>
    </>
  );
}
