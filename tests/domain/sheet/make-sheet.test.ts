import { describe, expect, it } from 'vitest';
import { recordId } from '../../../src/domain/records/rack-records';
import { sheetRounds } from '../../../src/domain/sheet/make-sheet';
import { cents, instant, midiNote, seconds } from '../../../src/domain/tuning/units';
import { leadNotes, panWith } from '../../browser/seeded-pans';
import { damagedLead, knockedLead } from '../../browser/sheet-rack';
import { sampleBlows, sampleErasure, sampleVisit } from '../../storage/rack/rack-sample';
import { benchReading, blowsSample } from '../rounds/bench-sample';
import { day, firstDay, startSample } from '../rounds/round-sample';
import { panRecordsOf, sheetSample } from './sheet-sample';

const sheet = sheetSample(knockedLead, 'The band, 555 0100');
const noteOf = (note: number) => {
  const found = sheet.notes.find((each) => each.note === note);
  if (!found) throw new Error(`no note ${note}`);
  return found;
};
const on = (days: number) => firstDay + days * day;

describe('the sheet of a pan', () => {
  it('names the pan, what is wanted and whom to answer', () => {
    expect(sheet.pan).toMatchObject({ name: 'Heron', owner: 'Northside', serial: 'HL 14' });
    expect(sheet.request).toEqual({
      wanted: 'Fine tuning; look at C4 and at the rim',
      wantedBy: 'before 20 August',
      contact: 'The band, 555 0100',
    });
  });

  it('has a row for every note of the layout, lowest first', () => {
    expect(sheet.notes.map(({ note }) => note)).toEqual(leadNotes);
  });

  it('states what was measured in hertz and cents: the planted values come back', () => {
    // D4 was planted 26 cents flat on a pan 6 cents sharp: 440·2^(−7/12)·2^(−20/1200) Hz.
    const { measured, standing, moved } = noteOf(62);
    expect(measured?.hz).toBeCloseTo(440 * 2 ** (-7 / 12) * 2 ** (-20 / 1200), 6);
    expect(measured?.cents).toBeCloseTo(-20, 6);
    expect(measured?.octave).toBeCloseTo(2, 6);
    expect(measured?.third?.kind).toBe('twelfth');
    expect(measured?.third?.cents).toBeCloseTo(31, 6);
    expect(measured?.strikes).toBe(3);
    expect(standing).toBe('out');
    // 4 flat on a pan 2 sharp before, 26 flat on one 6 sharp now: 22 lower by itself.
    expect(moved?.cents).toBeCloseTo(-22, 0);
    expect(moved?.hasChanged).toBe(true);
  });

  it('gives the time a note rings as that of a fall by 60 dB: ln(1000) time constants', () => {
    // Planted time constant 0.3 s; 20·log10(e) = 8.686 dB fall in each, so 60 / 8.686 = 6.908 of them.
    expect(noteOf(72).measured?.ring).toBeCloseTo((0.3 * 60) / (20 * Math.log10(Math.E)), 9);
    expect(noteOf(72).measured?.ring).toBeGreaterThan(seconds(2));
  });

  it('keeps two lines at the octave apart, and tells a note that walks and how far its strikes lie apart', () => {
    expect(noteOf(67).measured?.octaveRival).toBeCloseTo(14, 6);
    expect(noteOf(71)).toMatchObject({ standing: 'avoid', reason: { kind: 'walking' } });
    expect(noteOf(71).measured?.spread).toBeCloseTo(18, 6);
    expect(noteOf(71).measured?.walking?.centsPerStrike).toBeCloseTo(-6, 1);
  });

  it('shows a note as it was measured on the bench since the round, with its day', () => {
    const start = startSample({ day: 10 });
    const mended = benchReading(start, { note: 62, fundamental: -2 }, 120);
    const found = sheetSample([
      ...panWith({}, [{ day: 10, off: { 62: { fundamental: -31 }, 64: { fundamental: -20 } } }]),
      blowsSample(start, 62, 100),
      mended,
      blowsSample(start, 64, 130),
    ]);
    const row = (wanted: number) => found.notes.find(({ note }) => note === wanted);
    expect(row(62)).toMatchObject({ standing: 'good', benchAt: mended.at, work: 'measured' });
    expect(row(62)?.measured?.cents).toBeCloseTo(-2, 1);
    expect(row(64)).toMatchObject({ standing: 'out', benchAt: null, work: 'not-measured' });
  });

  it('shows marks and stopgaps in the rows of their notes', () => {
    expect(noteOf(60)).toMatchObject({ mark: 'dead', standing: 'avoid' });
    expect(noteOf(64)).toMatchObject({ mark: 'buzzing', standing: 'out' });
    expect(noteOf(65)).toMatchObject({ stopgap: 'magnet' });
    expect(sheet.stopgaps).toEqual([{ note: 65, kind: 'magnet', at: on(195) }]);
  });

  it('counts what changed from the first round after the last professional tuning', () => {
    expect(sheet.since).toMatchObject({
      kind: 'tuning',
      visit: { id: 'visit-30' },
      changes: { from: on(40), to: on(200) },
    });
    const changes = sheet.since.kind === 'tuning' ? sheet.since.changes : null;
    expect(changes?.panShift?.cents).toBeCloseTo(4, 0);
  });

  it('tells what happened since then, the newest first', () => {
    expect(sheet.events.map(({ kind, at }) => [kind, (at - firstDay) / day])).toEqual([
      ['marked', 200],
      ['marked', 200],
      ['knock', 190],
      ['visit', 90],
    ]);
    expect(sheet.events[0]).toMatchObject({ mark: 'dead', notes: [60] });
  });

  it('sums the blows since then note by note, and leaves out those before', () => {
    expect(sheet.blows).toEqual([
      {
        note: 62,
        sets: 2,
        counted: 7,
        hasUncounted: false,
        lastAt: on(101),
        logged: [{ place: 'border', side: 'above', firmness: 'light' }],
        unlogged: 1,
      },
      {
        note: 74,
        sets: 1,
        counted: 0,
        hasUncounted: true,
        lastAt: on(102),
        logged: [{ place: 'border', side: 'above', firmness: 'light' }],
        unlogged: 0,
      },
    ]);
  });

  it('says how it was measured', () => {
    expect(sheet.round).toMatchObject({
      at: on(200),
      way: 'guided',
      temperature: 26,
      standing: 'settled',
      isProvisional: false,
      takings: [{ source: 'practice', sampleRate: 48_000, appVersion: '0' }],
    });
    expect(sheet.panPitch?.cents).toBeCloseTo(6, 0);
  });
});

describe('the sheet of a pan that was struck after a knock', () => {
  const damaged = sheetSample(damagedLead);
  const signsOn = (found: typeof damaged, note: number) =>
    found.notes.find((each) => each.note === note)?.signs;
  const knocks = (found: typeof damaged) =>
    found.events.flatMap((event) => (event.kind === 'knock' ? [event] : []));

  it('shows the signs of damage in the rows of their notes', () => {
    expect(signsOn(damaged, 62)).toEqual({ kinds: ['no-octave'], areEarlier: false });
    expect(signsOn(damaged, 74)).toEqual({ kinds: ['choked', 'buzzing'], areEarlier: false });
    expect(signsOn(damaged, 75)).toEqual({ kinds: [], areEarlier: false });
    // It was given up as silent, so the round has no reading of it.
    const silent = damaged.notes.find(({ note }) => note === 76);
    expect(silent).toMatchObject({ measured: null, signs: { kinds: ['choked'] } });
  });

  it('tells them with the knock they were heard after, sign by sign, and with no other', () => {
    const [second, first] = knocks(damaged);
    expect(second).toMatchObject({ at: on(210), check: { id: 'check-2' } });
    expect(second?.signs).toEqual([
      { sign: 'choked', notes: [60, 69, 74, 76] },
      { sign: 'no-octave', notes: [62] },
      { sign: 'buzzing', notes: [64, 74] },
      { sign: 'no-third', notes: [66] },
      { sign: 'walking', notes: [71] },
      { sign: 'new-doublet', notes: [73] },
    ]);
    expect(first).toMatchObject({ check: { id: 'check-1' }, signs: null });
  });

  it('says of a later round’s notes that the signs are from before', () => {
    const later = panWith({}, [{ day: 220 }]).slice(1);
    const found = sheetSample([...damagedLead, ...later]);
    expect(found.round?.at).toBe(on(220));
    expect(signsOn(found, 74)).toEqual({ kinds: ['choked', 'buzzing'], areEarlier: true });
    expect(knocks(found)[0]?.signs).toHaveLength(6);
  });

  it('names none once a professional has put the pan right, nor where no soft round was taken', () => {
    const tuned = sheetSample([
      ...damagedLead,
      sampleVisit('visit-215', { visitedAt: instant(on(215)) }),
    ]);
    expect(knocks(tuned)).toEqual([]);
    expect(tuned.notes.every(({ signs }) => signs.kinds.length === 0)).toBe(true);
    expect(knocks(sheet).map(({ signs }) => signs)).toEqual([null]);
    expect(sheet.notes.every(({ signs }) => signs.kinds.length === 0)).toBe(true);
  });

  it('tells a soft round without a sign from none', () => {
    const check = damagedLead.filter(({ id }) => id === 'check-2');
    const sound = sheetSample([...panWith({}, [{ day: 3 }, { day: 210 }]), ...check]);
    expect(knocks(sound).map(({ signs }) => signs)).toEqual([[]]);
  });
});

describe('the sheet of a pan of which less is known', () => {
  it('without a round has its notes and says that they were not heard', () => {
    const bare = sheetSample(panWith({}, [], { 60: 'cracked' }));
    expect(bare.round).toBeNull();
    expect(bare.since).toEqual({ kind: 'none' });
    expect(bare.notes.every(({ measured }) => measured === null)).toBe(true);
    expect(bare.notes[0]).toMatchObject({ note: 60, standing: 'avoid', mark: 'cracked' });
    expect(bare.notes[1]).toMatchObject({ standing: 'unread' });
  });

  it('with one round and no tuning has nothing to compare with', () => {
    const once = sheetSample(panWith({}, [{ day: 3 }]));
    expect(once.since).toEqual({ kind: 'first-round', at: on(3), changes: null });
    expect(once.notes.every(({ moved }) => moved === null)).toBe(true);
  });

  it('without a tuning compares with the oldest round, and tells all blows', () => {
    const twice = sheetSample([
      ...panWith({}, [{ day: 3 }, { day: 30, off: { 62: { fundamental: -9 } } }]),
      { ...sampleBlows('blows-9', 62), at: instant(on(1)) },
    ]);
    expect(twice.since).toMatchObject({ kind: 'first-round', changes: { from: on(3) } });
    expect(twice.blows).toHaveLength(1);
  });

  it('compares with nothing while no round was taken since the tuner left', () => {
    const tuned = sheetSample([
      ...panWith({}, [{ day: 3 }]),
      sampleVisit('visit-9', { visitedAt: instant(on(9)) }),
    ]);
    expect(tuned.since).toMatchObject({ kind: 'tuning', changes: null });
  });

  it('takes a full round before a newer quick one, and the quick one where there is no other', () => {
    const pan = panRecordsOf(panWith({}, [{ day: 3 }, { day: 30, way: 'quick' }]));
    expect(sheetRounds(pan).shown?.id).toBe('round-3');
    const quick = panRecordsOf(panWith({}, [{ day: 30, way: 'quick' }]));
    expect(sheetRounds(quick).shown?.id).toBe('round-30');
  });

  it('leaves out blows and visits that were taken out again', () => {
    const records = [
      ...panWith({}, [{ day: 3 }]),
      { ...sampleBlows('blows-9', 62), at: instant(on(1)) },
      sampleVisit('visit-2', { visitedAt: instant(on(2)) }),
      sampleErasure('no-blows', 'blows-9'),
      sampleErasure('no-visit', 'visit-2'),
    ];
    const found = sheetSample(records);
    expect(found.blows).toEqual([]);
    expect(found.since.kind).toBe('first-round');
  });

  it('is judged by the marks that stand now, also where they are newer than the round', () => {
    const records = panWith({}, [{ day: 3 }]);
    const mark = {
      shape: 1 as const,
      kind: 'mark' as const,
      id: recordId('mark-late'),
      pan: records[0]?.pan ?? panRecordsOf([]).pan,
      at: instant(on(20)),
      round: null,
      note: midiNote(62),
      mark: 'cracked' as const,
    };
    const found = sheetSample([...records, mark]);
    expect(found.notes.find(({ note }) => note === 62)).toMatchObject({
      standing: 'avoid',
      mark: 'cracked',
    });
    expect(Math.abs(found.notes[1]?.measured?.cents ?? cents(99))).toBeLessThan(10);
  });
});
