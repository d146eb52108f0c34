// Buttons of a headset, through the browser's media session: it gives them only to a page that plays something.
import type { Headset } from '../domain/ports/headset-port';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import type { HeadsetButton } from '../domain/settings/hands-settings';

/** Six seconds of silence: shorter sounds get no buttons (a browser's own rule, from memory). */
const silence = 'silence.wav';

/** One button of most headsets plays and pauses in turn. */
const actions: readonly (readonly [MediaSessionAction, HeadsetButton])[] = [
  ['play', 'play'],
  ['pause', 'play'],
  ['nexttrack', 'forward'],
  ['previoustrack', 'back'],
];

export class BrowserHeadset implements Headset {
  readonly #watchers = new Set<(button: HeadsetButton) => void>();
  #player: HTMLAudioElement | null = null;

  watch(onPress: (button: HeadsetButton) => void): Unsubscribe {
    this.#watchers.add(onPress);
    if (this.#watchers.size === 1) this.#begin();
    return () => {
      if (this.#watchers.delete(onPress) && this.#watchers.size === 0) this.#end();
    };
  }

  #begin(): void {
    for (const [action, button] of actions) {
      listenTo(action, () => {
        // Pausing must not take the buttons away.
        this.#play();
        for (const watcher of [...this.#watchers]) watcher(button);
      });
    }
    this.#play();
  }

  #play(): void {
    this.#player ??= new Audio(new URL(silence, document.baseURI).href);
    this.#player.loop = true;
    // Refused before the first tap: then there are no buttons, and the screen still works.
    void this.#player.play().catch(() => {});
  }

  #end(): void {
    for (const [action] of actions) listenTo(action, null);
    this.#player?.pause();
    this.#player = null;
  }
}

function listenTo(action: MediaSessionAction, handler: (() => void) | null): void {
  try {
    navigator.mediaSession?.setActionHandler(action, handler);
  } catch {
    // This browser does not know the action.
  }
}
