import { describe, expect, it } from 'vitest';
import { canonicalText } from '../../../../src/domain/records/canonical-text';
import { restoreRecord } from '../../../../src/domain/records/restore/restore-record';
import * as fc from '../../../properties';
import { anyRecord, damaged } from '../record-arbitraries';

const line = { hz: 440, sigmaCents: 0.1, decaySeconds: 0.4, levelDb: -20 };
const strike = {
  fundamental: line,
  isInferred: false,
  octave: null,
  octaveRival: null,
  third: null,
  glideCents: 0,
  peakDb: -10,
  loudness: 'good',
  alsoRinging: [],
};
const taking = {
  source: 'microphone',
  sampleRate: 48_000,
  processing: [],
  gaps: 0,
  appVersion: '1',
};
const head = { shape: 1, id: 'a', pan: 'p', at: 5 };
const reading = {
  ...head,
  kind: 'reading',
  round: null,
  note: 69,
  strikes: [strike],
  taking,
  sound: null,
};
const blows = {
  ...head,
  kind: 'blows',
  round: null,
  note: 69,
  logged: { place: 'long-ends', side: 'above', firmness: 'light' },
  count: 4,
  before: 'b',
  after: 'c',
};
const place = { note: 60, ring: 'outer', clock: 6, radius: 0.8, along: 0.2, across: 0.1 };
const layout = { id: 'x', name: 'X', drums: [{ name: '', notes: [place] }], source: '' };
const edit = (fields: object) => ({ ...head, kind: 'pan-edit', fields, replaces: [] });

function restored(stored: unknown) {
  const result = restoreRecord(stored);
  if (result.kind !== 'restored') throw new Error(`left out: ${result.why} ${result.parts}`);
  return result;
}

describe('a record restored', () => {
  it('is unchanged and needs no repair if it was valid', () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
        expect(restoreRecord(JSON.parse(JSON.stringify(record)))).toEqual(restoreRecord(record));
      }),
    );
  });

  it('never throws, and what comes out is valid, whatever was stored', () => {
    const anyStored = fc.oneof(
      { weight: 1, arbitrary: fc.anything({ withNullPrototype: true }) },
      { weight: 1, arbitrary: fc.jsonValue() },
      { weight: 4, arbitrary: damaged(anyRecord) },
      { weight: 2, arbitrary: damaged(damaged(anyRecord)) },
    );
    let taken = 0;
    let repaired = 0;
    fc.assert(
      fc.property(anyStored, (stored) => {
        const result = restoreRecord(stored);
        if (result.kind === 'left-out') return;
        taken++;
        if (result.repairs.length > 0) repaired++;
        const { record } = result;
        expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
        // What is kept can be written and read again.
        expect(canonicalText(JSON.parse(JSON.stringify(record)))).toBe(canonicalText(record));
      }),
      { numRuns: 3_000 },
    );
    // The data are no good if hardly any gets through, or none is damaged.
    expect(taken).toBeGreaterThan(500);
    expect(repaired).toBeGreaterThan(300);
  });

  it('keeps what a later version added, at every depth', () => {
    const later = { mood: 'calm', list: [1, { two: 2 }] };
    const stored = { ...reading, later, strikes: [{ ...strike, fundamental: { ...line, later } }] };
    expect(restored(stored)).toEqual({ kind: 'restored', record: stored, repairs: [] });
  });

  it('loses one bad strike, not the reading', () => {
    const result = restored({
      ...reading,
      strikes: [strike, { ...strike, fundamental: { ...line, hz: '440' } }, strike],
    });
    expect(result.record).toEqual({ ...reading, strikes: [strike, strike] });
    expect(result.repairs).toEqual([
      'strikes[1].fundamental.hz',
      'strikes[1].fundamental',
      'strikes[1]',
    ]);
  });

  it('loses a bad octave, not the strike', () => {
    const bad = { ...strike, octave: { ...line, hz: Number.POSITIVE_INFINITY } };
    const result = restored({ ...reading, strikes: [bad] });
    expect(result.record).toEqual(reading);
    expect(result.repairs).toEqual(['strikes[0].octave.hz', 'strikes[0].octave']);
  });

  it.each([[{ knocks: -1, heardAsSeveral: 0 }], [{ knocks: 2 }], ['many'], [[3, 1]]])(
    'keeps a reading whose refused blows cannot be read as one of which none are known: %j',
    (refused) => {
      const { record } = restored({ ...reading, refused });
      expect(record).toEqual(reading);
    },
  );

  it('keeps blows whose place cannot be read as blows that nobody logged', () => {
    const logged = { ...blows.logged, place: 'everywhere' };
    const result = restored({ ...blows, logged, count: 0, after: 3 });
    expect(result.record).toEqual({ ...blows, logged: null, count: null, after: null });
    expect([...result.repairs].sort()).toEqual(['after', 'count', 'logged', 'logged.place']);
  });

  it('loses one bad field of an edit, not the edit', () => {
    const result = restored(edit({ name: 'Loft lead', a4: 4400, owner: 7, layout }));
    expect(result.record).toEqual(edit({ name: 'Loft lead', layout }));
    expect([...result.repairs].sort()).toEqual(['fields.a4', 'fields.owner']);
  });

  it('loses one bad note place of a layout, not the layout', () => {
    const notes = [place, { ...place, note: 200 }, { ...place, third: 'fifth' }];
    const result = restored(edit({ layout: { ...layout, drums: [{ name: '', notes }] } }));
    const kept = { ...layout, drums: [{ name: '', notes: [place, place] }] };
    expect(result.record).toEqual(edit({ layout: kept }));
    expect(result.repairs).toEqual([
      'fields.layout.drums[0].notes[1].note',
      'fields.layout.drums[0].notes[1]',
      'fields.layout.drums[0].notes[2].third',
    ]);
  });

  it.each([
    ['nothing', undefined, 'no-record'],
    ['a text', 'reading', 'no-record'],
    ['a list', [reading], 'no-record'],
    ['a later shape', { ...reading, shape: 2 }, 'newer'],
    ['a later shape of an unknown kind', { shape: 7 }, 'newer'],
    ['an unknown kind', { ...head, kind: 'weather' }, 'unknown-kind'],
    ['a kind that every object has', { ...head, kind: 'constructor' }, 'unknown-kind'],
    ['no shape', { ...reading, shape: undefined }, 'damaged'],
    ['no id', { ...reading, id: '' }, 'damaged'],
    ['a moment that is none', { ...reading, at: 1e300 }, 'damaged'],
    ['no strike', { ...reading, strikes: [] }, 'damaged'],
    ['a note that is none', { ...reading, note: 128 }, 'damaged'],
    ['blows on no note', { ...blows, note: null }, 'damaged'],
    ['half a note', { ...reading, note: 60.5 }, 'damaged'],
  ])('is left out if it is %s', (_what, stored, why) => {
    expect(restoreRecord(stored)).toMatchObject({ kind: 'left-out', why });
  });
});

describe('a record from a malicious file', () => {
  it('keeps script as plain text', () => {
    const name = '<img src=x onerror=alert(1)>';
    expect(restored(edit({ name })).record).toEqual(edit({ name }));
  });

  it('has its texts cut, never through a character', () => {
    const result = restored(edit({ name: `${'x'.repeat(79)}😀😀`, remarks: 'y'.repeat(1e6) }));
    expect(result.record).toEqual(edit({ name: 'x'.repeat(79), remarks: 'y'.repeat(10_000) }));
    expect(result.repairs).toEqual(['fields.name', 'fields.remarks']);
  });

  it('has no more notes than any pan, and few repairs are listed', () => {
    const notes = new Array(1e6).fill({ ...place, note: -1 });
    const drums = new Array(1e5).fill({ name: '', notes });
    const result = restored(edit({ layout: { ...layout, drums } }));
    expect(JSON.stringify(result.record).length).toBeLessThan(2_000);
    expect(result.repairs).toHaveLength(50);
  });

  it('loses unknown fields that are nested deep, large, many or dangerous', () => {
    let deep: unknown = 1;
    for (let k = 0; k < 100_000; k++) deep = [deep];
    const many = Object.fromEntries(Array.from({ length: 50 }, (_, k) => [`field${k}`, 1]));
    const stored = {
      ...reading,
      deep,
      large: Array.from({ length: 1e5 }, () => 0),
      long: 'x'.repeat(1e6),
      act: () => 1,
      ...JSON.parse('{"__proto__":{"note":1}}'),
    };
    expect(restored(stored).record).toEqual(reading);
    expect(Object.getPrototypeOf(restored(stored).record)).toBe(Object.prototype);
    expect(Object.keys(restored({ ...reading, ...many }).record)).toHaveLength(10 + 32);
  });
});
