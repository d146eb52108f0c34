// What a key does, and how it comes to do it.
import {
  canBeBound,
  type HandAction,
  type HandKey,
  type HandKeys,
  handActions,
  isSameKey,
} from './hands-settings';

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
