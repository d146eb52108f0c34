import type { HeadsetButton } from '../settings/hands-settings';
import type { Unsubscribe } from './unsubscribe';

/** The buttons of a headset. Never throws: where the browser gives none, none are pressed. */
export interface Headset {
  /** Call inside a tap, or soon after one. The buttons do nothing else until all watchers are gone. */
  watch(onPress: (button: HeadsetButton) => void): Unsubscribe;
}
