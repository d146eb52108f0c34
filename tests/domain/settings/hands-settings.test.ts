import { describe, expect, it } from 'vitest';
import { actionOf, isSameKey, withKey } from '../../../src/domain/settings/bind-hand-keys';
import {
  type HandAction,
  type HandKey,
  handActions,
  headsetButtons,
} from '../../../src/domain/settings/hands-settings';
import { restoreSettings } from '../../../src/domain/settings/restore-settings';
import { defaultSettings } from '../../../src/domain/settings/settings';
import * as fc from '../../properties';

const pageDown: HandKey = { kind: 'key', code: 'PageDown' };
const volume: HandKey = { kind: 'key', code: 'AudioVolumeUp' };
const forward: HandKey = { kind: 'headset', button: 'forward' };
const none = defaultSettings.handKeys;

const anyKey: fc.Arbitrary<HandKey> = fc.oneof(
  fc.record({
    kind: fc.constant('key' as const),
    code: fc.constantFrom('KeyK', 'Enter', 'Space', 'PageDown', 'AudioVolumeUp', 'Tab', 'Escape'),
  }),
  fc.record({ kind: fc.constant('headset' as const), button: fc.constantFrom(...headsetButtons) }),
);
const anyAction: fc.Arbitrary<HandAction> = fc.constantFrom(...handActions);

describe('keys for busy hands', () => {
  it('are bound to nothing at first, and the voice is off', () => {
    expect(none).toEqual({ keep: null, next: null });
    expect(defaultSettings.speaksVerdict).toBe(false);
    expect(defaultSettings.settledSign).toBe('nothing');
    expect(actionOf(none, pageDown)).toBeNull();
  });

  it('do what they were bound to, and another key of the same kind does not', () => {
    const keys = withKey(withKey(none, 'keep', volume), 'next', forward);
    expect(actionOf(keys, { ...volume })).toBe('keep');
    expect(actionOf(keys, { kind: 'headset', button: 'forward' })).toBe('next');
    expect(actionOf(keys, { kind: 'headset', button: 'back' })).toBeNull();
    expect(actionOf(keys, pageDown)).toBeNull();
  });

  it('never do two things: the newest binding counts', () => {
    const keys = withKey(withKey(none, 'keep', pageDown), 'next', pageDown);
    expect(keys).toEqual({ keep: null, next: pageDown });
  });

  it('leave the keys alone that lead around the screen', () => {
    for (const code of ['Tab', 'Escape', 'ShiftLeft', 'Control']) {
      expect(withKey(none, 'keep', { kind: 'key', code })).toEqual(none);
    }
  });

  it('are valid whatever is bound in whatever order', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyAction, fc.option(anyKey))), (bindings) => {
        const keys = bindings.reduce((now, [action, key]) => withKey(now, action, key), none);
        const handKeys = { ...keys };
        expect(restoreSettings({ handKeys })).toEqual({
          value: { ...defaultSettings, handKeys },
          repairs: [],
        });
      }),
    );
  });

  it('survive storage', () => {
    const handKeys = { keep: volume, next: forward };
    const kept = restoreSettings(JSON.parse(JSON.stringify({ ...defaultSettings, handKeys })));
    expect(kept.value.handKeys).toEqual(handKeys);
    expect(kept.repairs).toEqual([]);
  });

  it.each<readonly [unknown, unknown, readonly string[]]>([
    [null, none, ['handKeys']],
    ['PageDown', none, ['handKeys']],
    [{}, none, ['handKeys.keep', 'handKeys.next']],
    [{ keep: pageDown }, { keep: pageDown, next: null }, ['handKeys.next']],
    [{ keep: pageDown, next: pageDown }, { keep: pageDown, next: null }, ['handKeys.next']],
    ...[
      { kind: 'key', code: 'Tab' },
      { kind: 'key', code: 'x'.repeat(41) },
      { kind: 'key', code: '' },
    ].map(
      (key) =>
        [
          { keep: key, next: volume },
          { keep: null, next: volume },
          ['handKeys.keep.code', 'handKeys.keep'],
        ] as const,
    ),
    [
      { keep: volume, next: { kind: 'headset', button: 'louder' } },
      { keep: volume, next: null },
      ['handKeys.next.button', 'handKeys.next'],
    ],
  ])('that are bad are taken away alone, and it is said: %j', (handKeys, left, said) => {
    const { value, repairs } = restoreSettings({ ...defaultSettings, handKeys });
    expect(value.handKeys).toEqual(left);
    expect(repairs).toEqual(said);
  });

  it('are missing in the settings of an older app, which is no fault', () => {
    const {
      handKeys: _keys,
      speaksVerdict: _speaks,
      settledSign: _sign,
      ...older
    } = defaultSettings;
    const { value, repairs } = restoreSettings(older);
    expect(value.handKeys).toEqual(none);
    expect(value.settledSign).toBe('nothing');
    expect(repairs).toEqual([]);
    const bad = restoreSettings({ ...defaultSettings, settledSign: 'siren' });
    expect(bad.value.settledSign).toBe('nothing');
    expect(bad.repairs).toEqual(['settledSign']);
  });

  it('are the same key when they have the same name, never across kinds', () => {
    fc.assert(
      fc.property(anyKey, anyKey, (one, other) => {
        expect(isSameKey(one, other)).toBe(JSON.stringify(one) === JSON.stringify(other));
      }),
    );
  });
});
