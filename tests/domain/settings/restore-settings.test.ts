import { describe, expect, it } from 'vitest';
import { defaultSettings, restoreSettings } from '../../../src/domain/settings/settings';
import * as fc from '../../properties';

/** Anything storage may hold, often with the field names that settings have. */
const anyStored = fc.oneof(
  fc.anything(),
  fc.record(
    {
      shape: fc.anything(),
      a4: fc.oneof(fc.double(), fc.integer({ min: 380, max: 500 }), fc.anything()),
      theme: fc.oneof(fc.constantFrom('system', 'light', 'dark'), fc.anything()),
      announcement: fc.oneof(fc.constantFrom('nothing', 'beep', 'voice'), fc.anything()),
      reference: fc.oneof(fc.constantFrom('band', 'pan'), fc.anything()),
      keepsSound: fc.oneof(fc.boolean(), fc.anything()),
      lastBackup: fc.oneof(
        fc.constant(null),
        fc.record({ at: fc.anything(), readings: fc.anything() }),
        fc.record({ at: fc.nat(), readings: fc.nat() }),
        fc.anything(),
      ),
      isTrained: fc.oneof(fc.boolean(), fc.anything()),
      suggestsBlows: fc.oneof(fc.boolean(), fc.anything()),
      professional: fc.oneof(fc.record({ farthest: fc.anything() }), fc.anything()),
      lastBlows: fc.oneof(
        fc.record({ place: fc.constant('middle'), side: fc.anything(), firmness: fc.anything() }),
        fc.anything(),
      ),
      work: fc.oneof(
        fc.record({ pan: fc.string(), notes: fc.array(fc.anything()) }),
        fc.anything(),
      ),
      later: fc.anything(),
    },
    { requiredKeys: [] },
  ),
);

describe('settings restored from storage', () => {
  it('are valid whatever was stored', () => {
    fc.assert(
      fc.property(anyStored, (stored) => {
        const { value } = restoreSettings(stored);
        expect(value.shape).toBe(1);
        expect(value.a4 >= 400 && value.a4 <= 480).toBe(true);
        expect(['system', 'light', 'dark']).toContain(value.theme);
        expect(['nothing', 'beep', 'voice']).toContain(value.announcement);
        expect(['band', 'pan']).toContain(value.reference);
        expect(value.keepsSound).toBeTypeOf('boolean');
        expect(value.lastBackup === null || value.lastBackup.readings >= 0).toBe(true);
      }),
    );
  });

  it('stay as they are when restored again, with nothing left to repair', () => {
    fc.assert(
      fc.property(anyStored, (stored) => {
        const { value } = restoreSettings(stored);
        expect(restoreSettings(value)).toEqual({ value, repairs: [] });
      }),
    );
  });

  it('are the defaults, without a repair, when nothing was stored', () => {
    expect(restoreSettings(undefined)).toEqual({ value: defaultSettings, repairs: [] });
    expect(restoreSettings(null)).toEqual({ value: defaultSettings, repairs: [] });
  });

  it('keep valid fields and fields of a later version', () => {
    const stored = { shape: 1, a4: 442.5, theme: 'dark', later: 'kept' };
    expect(restoreSettings(stored)).toEqual({
      value: { ...defaultSettings, ...stored },
      repairs: [],
    });
  });

  it.each([399.9, 480.1, Number.NaN, '440', null])('repair an A4 of %s and say so', (a4) => {
    const { value, repairs } = restoreSettings({ shape: 1, a4, theme: 'light' });
    expect(value).toEqual({ ...defaultSettings, theme: 'light' });
    expect(repairs).toEqual(['a4']);
  });
});
