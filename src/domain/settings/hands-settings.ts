// What the settings hold for busy hands: the keys that keep and move on, and whether the verdict is spoken.

export const handActions = ['keep', 'next'] as const;
/** What a key can do without the screen being touched. */
export type HandAction = (typeof handActions)[number];

export const headsetButtons = ['play', 'forward', 'back'] as const;
export type HeadsetButton = (typeof headsetButtons)[number];

/** A key of a keyboard, a phone or a remote by its `code` (or its name, where it has none), or a button of a headset. */
export type HandKey =
  | { readonly kind: 'key'; readonly code: string }
  | { readonly kind: 'headset'; readonly button: HeadsetButton };

export type HandKeys = Readonly<Record<HandAction, HandKey | null>>;

export interface HandsSettings {
  readonly handKeys: HandKeys;
  /** A voice says the verdict when a reading has settled on the bench. */
  readonly speaksVerdict: boolean;
}

export const usualHandsSettings: HandsSettings = {
  handKeys: { keep: null, next: null },
  speaksVerdict: false,
};

/** Names of keys are short; anything longer is no key. */
const longestCode = 40;

/** What each field may hold. */
export const isValidForHands: Readonly<Record<keyof HandsSettings, (value: unknown) => boolean>> = {
  handKeys: (value) => {
    const keys = partsOf(value);
    if (!handActions.every((action) => keys[action] === null || isHandKey(keys[action]))) {
      return false;
    }
    const [keep, next] = handActions.map((action) => keys[action]);
    return keep === null || next === null || !isSameKey(keep as HandKey, next as HandKey);
  },
  speaksVerdict: (value) => typeof value === 'boolean',
};

/** Keys that lead around the screen, or only change what another key means, cannot be given away. */
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

function isHandKey(value: unknown): value is HandKey {
  const { kind, code, button } = partsOf(value);
  if (kind === 'headset') return headsetButtons.some((each) => each === button);
  return (
    kind === 'key' &&
    typeof code === 'string' &&
    code.length > 0 &&
    code.length <= longestCode &&
    canBeBound({ kind, code })
  );
}

const partsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
