import type { HeadsetButton } from '../settings/hands-settings';
import type { Unsubscribe } from './unsubscribe';

/** The buttons of a headset. Never throws: where the browser offers none, none are ever pressed. */
export interface Headset {
  /** Call inside a tap, or soon after one. Until all watchers are gone the buttons do nothing else. */
  watch(onPress: (button: HeadsetButton) => void): Unsubscribe;
}
