import { describe, expect, it } from 'vitest';
import { restoreSettings } from '../../../src/domain/settings/restore-settings';
import { defaultSettings } from '../../../src/domain/settings/settings';
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
      limits: fc.oneof(
        fc.record({ good: fc.record({ main: fc.double() }), highestWithPartials: fc.integer() }),
        fc.anything(),
      ),
      tunes: fc.oneof(
        fc.array(fc.record({ name: fc.anything(), notes: fc.array(fc.anything()) })),
        fc.array(fc.record({ name: fc.string(), notes: fc.array(fc.nat(14)) })),
        fc.anything(),
      ),
      setNeeds: fc.oneof(fc.record({ keys: fc.array(fc.nat(14)) }), fc.anything()),
      tonightRules: fc.oneof(fc.dictionary(fc.string(), fc.anything()), fc.anything()),
      handKeys: fc.oneof(
        fc.record({ keep: fc.anything(), next: fc.constant(null) }),
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

  it('lose one bad tune and no other', () => {
    const good = { name: 'Slow one', notes: [1, 4] };
    const tunes = [good, { name: ' ', notes: [1] }, { name: 'Fast one', notes: [0, 12, 11] }, null];
    const { value, repairs } = restoreSettings({ tunes });
    expect(value.tunes).toEqual([good, { name: 'Fast one', notes: [0, 11] }]);
    expect(repairs).toEqual(['tunes[1].name', 'tunes[1]', 'tunes[2].notes[1]', 'tunes[3]']);
  });

  it('hold 200 tunes at most, names of 60 letters and 12 notes each', () => {
    const long = { name: 'x'.repeat(61), notes: Array(13).fill(1) };
    const { value, repairs } = restoreSettings({ tunes: Array(201).fill(long) });
    expect(value.tunes).toHaveLength(200);
    expect(value.tunes[0]).toEqual({ name: 'x'.repeat(60), notes: Array(12).fill(1) });
    expect(repairs.slice(0, 3)).toEqual(['tunes', 'tunes[0].name', 'tunes[0].notes']);
  });

  it('keep what the set needs, except what is no note and no name', () => {
    const { value, repairs } = restoreSettings({ setNeeds: { keys: [5, 0.5], tunes: ['A', 7] } });
    expect(value.setNeeds).toEqual({ keys: [5], tunes: ['A'], notes: [] });
    expect(repairs).toEqual(['setNeeds.keys[1]', 'setNeeds.tunes[1]', 'setNeeds.notes']);
  });

  it('keep the other limits beside a bad one', () => {
    const limits = {
      ...defaultSettings.limits,
      good: { main: 0, third: 8 },
      out: { main: 40, third: 60 },
    };
    const { value, repairs } = restoreSettings({ limits });
    expect(value.limits).toEqual({ ...limits, good: { main: 5, third: 8 } });
    expect(repairs).toEqual(['limits.good.main']);
  });

  it('take the usual limits for limits that narrow on the way out', () => {
    const limits = { ...defaultSettings.limits, out: { main: 3, third: 60 } };
    const { value, repairs } = restoreSettings({ limits });
    expect(value.limits).toEqual(defaultSettings.limits);
    expect(repairs).toEqual(['limits']);
  });

  it('keep the other limits for a professional, and a plan without the note that is none', () => {
    const work = { pan: 'pan-1', notes: [60, 200, 64], round: 'round-1' };
    const { value, repairs } = restoreSettings({
      professional: { farthest: 80, falling: 1 },
      work,
    });
    expect(value.professional).toEqual({ ...defaultSettings.professional, farthest: 80 });
    expect(value.work).toEqual({ ...work, notes: [60, 64] });
    expect(repairs).toEqual([
      'professional.withoutOctave',
      'professional.shortestDecay',
      'professional.falling',
      'work.notes[1]',
    ]);
  });

  it('cut a contact that is too long, like any text of a record', () => {
    const { value, repairs } = restoreSettings({ contact: 'x'.repeat(501) });
    expect(value.contact).toBe('x'.repeat(500));
    expect(repairs).toEqual(['contact']);
  });

  it('keep changed rules of tonight as they are: each is judged where it is used', () => {
    const tonightRules = { 'off-avoid': 45, heat: 'hot', 'of-a-later-version': [1] };
    expect(restoreSettings({ tonightRules })).toEqual({
      value: { ...defaultSettings, tonightRules },
      repairs: [],
    });
    expect(restoreSettings({ tonightRules: [] }).repairs).toEqual(['tonightRules']);
  });
});
