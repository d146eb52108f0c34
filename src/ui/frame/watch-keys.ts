// Keys of a keyboard, a phone or a remote, before any button on the screen gets them.
import type { HandKey } from '../../domain/settings/hands-settings';

/** The key of a keyboard event; some remotes and phones give their keys a name only. */
export const keyOf = ({ code, key }: Pick<KeyboardEvent, 'code' | 'key'>): HandKey => ({
  kind: 'key',
  code: code === '' ? key : code,
});

/** Where letters are typed no key means anything else. */
const isTypedInto = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(target.type)));

/**
 * Tells `onPress` of every key that is pressed; what it answers with true does nothing else. A key that is held down
 * counts once. Returns how to end it.
 */
export function watchKeys(window: Window, onPress: (key: HandKey) => boolean): () => void {
  let taken: string | null = null;
  const swallow = (event: KeyboardEvent): void => {
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  const down = (event: KeyboardEvent): void => {
    if (event.isComposing || isTypedInto(event.target)) return;
    const key = keyOf(event);
    const name = key.kind === 'key' ? key.code : '';
    if (event.repeat) {
      if (name === taken) swallow(event);
      return;
    }
    taken = null;
    if (event.ctrlKey || event.altKey || event.metaKey || !onPress(key)) return;
    taken = name;
    swallow(event);
  };
  // A button is pressed by the space bar when that is let go.
  const up = (event: KeyboardEvent): void => {
    const key = keyOf(event);
    if (key.kind !== 'key' || key.code !== taken) return;
    taken = null;
    swallow(event);
  };
  window.addEventListener('keydown', down, true);
  window.addEventListener('keyup', up, true);
  return () => {
    window.removeEventListener('keydown', down, true);
    window.removeEventListener('keyup', up, true);
  };
}
