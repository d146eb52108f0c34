// The keys that the user has bound, while a screen is open that they are for.
import { useLayoutEffect, useRef } from 'preact/hooks';
import { actionOf, type HandAction, type HandKey } from '../../../domain/settings/hands-settings';
import type { AppModels } from '../../frame/app-models';
import { watchKeys } from '../../frame/watch-keys';

/** What each action does here. */
export type HandActions = Readonly<Record<HandAction, () => void>>;

/** `onOther` is asked about keys that are not bound, and answers true if it used one. */
export function useHandKeys(
  { settings, headset }: Pick<AppModels, 'settings' | 'headset'>,
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
