// The far view in place of a screen, and the hand keys of both.
import { useState } from 'preact/hooks';
import { type HandActions, type HandKeySources, useHandKeys } from '../controls/use-hand-keys';

export interface FarViewState {
  readonly isFar: boolean;
  readonly show: () => void;
  readonly leave: () => void;
}

/** `actions`: what the bound keys do; any other key leads back from the far view. */
export function useFarView(sources: HandKeySources, actions: HandActions): FarViewState {
  const [isFar, setIsFar] = useState(false);
  const leave = (): void => setIsFar(false);
  useHandKeys(sources, actions, () => {
    leave();
    return isFar;
  });
  return { isFar, show: () => setIsFar(true), leave };
}
