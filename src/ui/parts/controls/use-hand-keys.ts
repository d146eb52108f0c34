// The keys that the user has bound, while a screen is open that they are for.
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Headset } from '../../../domain/ports/headset-port';
import { actionOf } from '../../../domain/settings/bind-hand-keys';
import type { HandAction, HandKey } from '../../../domain/settings/hands-settings';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { watchKeys } from '../../frame/watch-keys';

/** What each action does here. */
export type HandActions = Readonly<Record<HandAction, () => void>>;

/** Which keys are bound, and where those come from that are on no keyboard. */
export interface HandKeySources {
  readonly settings: Pick<SettingsModel, 'hands'>;
  readonly headset: Headset;
}

/** `onOther` is asked about keys that are not bound, and answers true if it used one. */
export function useHandKeys(
  { settings, headset }: HandKeySources,
  actions: HandActions,
  onOther: (key: HandKey) => boolean = () => false,
): void {
  // The newest ones, without watching anew whenever the screen is drawn.
  const newest = useRef({ actions, onOther });
  newest.current = { actions, onOther };
  const keys = settings.hands.value.handKeys;
  // Before anything is painted: whoever sees the screen may press a key at once.
  useLayoutEffect(() => {
    const press = (key: HandKey): boolean => {
      const action = actionOf(keys, key);
      if (action === null) return newest.current.onOther(key);
      newest.current.actions[action]();
      return true;
    };
    const endKeys = watchKeys(window, press);
    const isOnHeadset = [keys.keep, keys.next].some((key) => key?.kind === 'headset');
    const endHeadset = isOnHeadset
      ? headset.watch((button) => void press({ kind: 'headset', button }))
      : null;
    return () => {
      endKeys();
      endHeadset?.();
    };
  }, [headset, keys]);
}
