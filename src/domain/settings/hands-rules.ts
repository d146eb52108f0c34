// What the settings hold for busy hands, as it was stored.
import { type FieldRules, fieldsOf, needed, orElse, orUsual } from '../records/restore/field-rules';
import { bad, oneOf, orNull, type Rule, trueOrFalse } from '../records/restore/value-rules';
import { canBeBound, isSameKey } from './bind-hand-keys';
import {
  type HandKey,
  type HandKeys,
  type HandsSettings,
  headsetButtons,
  usualHandsSettings,
} from './hands-settings';

/** Names of keys are short; anything longer is no key (chosen, no source). */
const longestCode = 40;

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

/** A key that was bound to two things does the first. */
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
