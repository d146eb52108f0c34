// What a key does, and how it comes to do it.
import { type HandAction, type HandKey, type HandKeys, handActions } from './hands-settings';

/** Keys that move around the screen, or only change what another key means, cannot be bound. */
const notForActions: readonly string[] = [
  'Tab',
  'Escape',
  ...['Shift', 'Control', 'Alt', 'Meta'].flatMap((key) => [key, `${key}Left`, `${key}Right`]),
  'CapsLock',
  'Unidentified',
];

export const canBeBound = (key: HandKey): boolean =>
  key.kind === 'headset' || !notForActions.includes(key.code);

export const isSameKey = (one: HandKey, other: HandKey): boolean =>
  one.kind === 'key'
    ? other.kind === 'key' && one.code === other.code
    : other.kind === 'headset' && one.button === other.button;

/** What `key` is bound to, or null. */
export const actionOf = (keys: HandKeys, key: HandKey): HandAction | null =>
  handActions.find((action) => {
    const bound = keys[action];
    return bound !== null && isSameKey(bound, key);
  }) ?? null;

/** The keys with `key` bound to `action`; what it did before it does no more. Null takes the key away. */
export function withKey(keys: HandKeys, action: HandAction, key: HandKey | null): HandKeys {
  if (key !== null && !canBeBound(key)) return keys;
  const before = key === null ? null : actionOf(keys, key);
  return { ...keys, ...(before === null ? {} : { [before]: null }), [action]: key };
}
