// What the settings hold for busy hands: the keys that keep and move on, and whether the verdict is spoken.
import { type FieldRules, fieldsOf, needed, orElse, orUsual } from '../records/restore/field-rules';
import { bad, oneOf, orNull, type Rule, trueOrFalse } from '../records/restore/value-rules';

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

const headsetKeyRule = fieldsOf<Extract<HandKey, { kind: 'headset' }>>({
  kind: needed(oneOf(['headset'])),
  button: needed(oneOf(headsetButtons)),
});
const plainKeyRule = fieldsOf<Extract<HandKey, { kind: 'key' }>>({
  kind: needed(oneOf(['key'])),
  code: needed((stored) => (isCode(stored) ? stored : bad)),
});

const isCode = (value: unknown): value is string =>
  typeof value === 'string' &&
  value !== '' &&
  value.length <= longestCode &&
  canBeBound({ kind: 'key', code: value });

const keyRule: Rule<HandKey> = (stored, repairs) =>
  isHeadset(stored) ? headsetKeyRule(stored, repairs) : plainKeyRule(stored, repairs);

const isHeadset = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'headset';

const keysRules: FieldRules<HandKeys> = {
  keep: orElse(orNull(keyRule), null),
  next: orElse(orNull(keyRule), null),
};

/** A key that would do two things does the first. */
const handKeysRule: Rule<HandKeys> = (stored, repairs) => {
  const keys = fieldsOf(keysRules)(stored, repairs);
  if (keys === bad || !keys.keep || !keys.next || !isSameKey(keys.keep, keys.next)) return keys;
  repairs.add('next');
  return { ...keys, next: null };
};

export const handsRules: FieldRules<HandsSettings> = {
  handKeys: orUsual(handKeysRule, usualHandsSettings.handKeys),
  speaksVerdict: orUsual(trueOrFalse, usualHandsSettings.speaksVerdict),
};
