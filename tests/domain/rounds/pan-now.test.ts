import { describe, expect, it } from 'vitest';
import {
  type PanRecords,
  panId,
  type ReadingRecord,
  recordId,
  type Stopgap,
} from '../../../src/domain/records/rack-records';
import { panNow, resultNow } from '../../../src/domain/rounds/pan-now';
import { resultOf } from '../../../src/domain/rounds/result-of-round';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, instant } from '../../../src/domain/tuning/units';
import { sampleEdit, samplePanRecords } from '../../storage/rack/rack-sample';
import { benchReading, blowsSample } from './bench-sample';
import { leadNotes } from './result-sample';
import { endSample, markSample, readingSample, startSample } from './round-sample';

const settings = { a4: hertz(440), reference: 'band', limits: usualTolerances } as const;
/** C5, found flat. */
const flat = 72;
const round = startSample({ day: 10 });
const ofRound = leadNotes.map((note, k) =>
  readingSample(round, { note, fundamental: note === flat ? -31 : 1 }, k + 1),
);
const recordsOf = (more: Partial<PanRecords> = {}): PanRecords =>
  samplePanRecords({
    edits: [sampleEdit('edit-1', 'Heron')],
    rounds: [round],
    ends: [endSample(round)],
    ...more,
  });
const nowWith = (more: readonly ReadingRecord[], records: Partial<PanRecords> = {}) =>
  panNow(round, [...ofRound, ...more], recordsOf(records), settings);
const noteIn = (pan: ReturnType<typeof panNow>, wanted = flat) => {
  const found = pan.notes.find(({ note }) => note === wanted);
  if (!found) throw new Error('no such note');
  return found;
};
const mended = benchReading(round, { note: flat, fundamental: -2 }, 120);

describe('a note as it stands now', () => {
  it('is as the newest round found it while nothing newer is known', () => {
    const now = nowWith([]);
    expect(noteIn(now)).toMatchObject({ standing: 'avoid', takenIn: 'round', work: 'none' });
    expect(resultNow(now)).toMatchObject(resultOf(round, ofRound, recordsOf(), settings));
  });

  it('is as the bench measured it after the round, dated by that reading', () => {
    const now = nowWith([mended]);
    expect(noteIn(now)).toMatchObject({
      standing: 'good',
      takenIn: 'bench',
      readAt: mended.at,
      work: 'none',
    });
    expect(noteIn(now).againstBand).toBeCloseTo(-2, 1);
    expect(now.worst).toEqual([]);
    expect(now.standings).toMatchObject({ good: 29, avoid: 0 });
  });

  it('leaves the result of the round what it was', () => {
    const result = resultOf(round, [...ofRound, mended], recordsOf(), settings);
    expect(result.worst.map(({ note }) => note)).toEqual([flat]);
  });

  it('is as the round found it where the bench is older', () => {
    const older = benchReading(round, { note: flat, fundamental: 3 }, -60);
    expect(noteIn(nowWith([older]))).toMatchObject({ standing: 'avoid', takenIn: 'round' });
  });

  it('is not what older bench readings said where the round did not hear it', () => {
    const older = benchReading(round, { note: flat, fundamental: 3 }, -60);
    const rest = ofRound.filter(({ note }) => note !== flat);
    const now = panNow(round, [...rest, older], recordsOf(), settings);
    expect(noteIn(now)).toMatchObject({ standing: 'unread', takenIn: null, readAt: null });
  });

  it('is not what one strike on the bench says where three agreed before', () => {
    const single = benchReading(round, { note: flat, fundamental: 12, strikes: 1 }, 150);
    expect(noteIn(nowWith([mended, single]))).toMatchObject({
      standing: 'good',
      readAt: mended.at,
    });
    expect(noteIn(nowWith([single]))).toMatchObject({ standing: 'avoid', takenIn: 'round' });
  });

  it('is what one strike of a quick round says, until it is measured on the bench', () => {
    const quick = startSample({ day: 20, way: 'quick' });
    const struck = readingSample(quick, { note: flat, fundamental: 14, strikes: 1 });
    const records = recordsOf({
      rounds: [round, quick],
      ends: [endSample(round), endSample(quick)],
    });
    const fresh = benchReading(quick, { note: flat, fundamental: 1 }, 30);
    const asked = (more: readonly ReadingRecord[]) =>
      noteIn(panNow(quick, [mended, struck, ...more], records, settings));
    expect(asked([])).toMatchObject({ standing: 'out', takenIn: 'round' });
    expect(asked([]).quick).not.toBeNull();
    expect(asked([fresh])).toMatchObject({ standing: 'good', takenIn: 'bench', quick: null });
  });

  it('is to be avoided once it walks on the bench, though such a reading never settles', () => {
    const walks = benchReading(round, { note: 60, strikes: [0, -3, -6, -9] }, 90);
    const now = noteIn(nowWith([walks]), 60);
    expect(now.reading?.settled).toBe(false);
    expect(now).toMatchObject({ standing: 'avoid', reason: { kind: 'walking' } });
  });

  it('is dead or cracked for as long as it is marked so, however well it was measured', () => {
    for (const mark of ['dead', 'cracked'] as const) {
      const marks = [{ ...markSample(flat, mark), at: instant(mended.at - 1000) }];
      expect(noteIn(nowWith([mended], { marks }))).toMatchObject({
        standing: 'avoid',
        reason: { kind: 'mark', mark },
      });
    }
  });

  it('does not follow from readings that were erased', () => {
    const erasure = {
      kind: 'erasure',
      shape: 1,
      id: recordId('erasure-1'),
      pan: panId('pan-1'),
      at: instant(mended.at + 1),
      target: mended.id,
    } as const;
    expect(noteIn(nowWith([mended], { erasures: [erasure] })).standing).toBe('avoid');
  });

  it('is known from the bench alone before the first round', () => {
    const records = samplePanRecords({ edits: [sampleEdit('edit-1', 'Heron')] });
    const now = panNow(null, [mended], records, settings);
    expect(noteIn(now)).toMatchObject({ standing: 'good', takenIn: 'bench' });
    expect(now.standings).toMatchObject({ good: 1, unread: 28 });
    expect(resultNow(now)).toBeNull();
  });
});

describe('a note that was worked on since the round', () => {
  it('is marked so, and as measured once it was struck after the last blows', () => {
    const blows = [blowsSample(round, flat, 100)];
    expect(noteIn(nowWith([mended], { blows })).work).toBe('measured');
    expect(noteIn(nowWith([mended], { blows }), 60).work).toBe('none');
  });

  it('is marked as not measured while blows are newer than its reading', () => {
    expect(noteIn(nowWith([], { blows: [blowsSample(round, flat, 100)] })).work).toBe(
      'not-measured',
    );
    expect(noteIn(nowWith([mended], { blows: [blowsSample(round, flat, 130)] })).work).toBe(
      'not-measured',
    );
  });

  it('is marked as not measured where only one strike followed', () => {
    const single = benchReading(round, { note: flat, fundamental: 4, strikes: 1 }, 150);
    const blows = [{ ...blowsSample(round, flat, 140), before: mended.id, after: single.id }];
    expect(noteIn(nowWith([mended, single], { blows }))).toMatchObject({
      readAt: mended.at,
      work: 'not-measured',
    });
  });

  it('is marked as not measured where the reading before the blows was written down after them', () => {
    const blows = [{ ...blowsSample(round, flat, 119), before: mended.id }];
    expect(noteIn(nowWith([mended], { blows })).work).toBe('not-measured');
  });

  it('is not marked for work from before the round', () => {
    expect(noteIn(nowWith([], { blows: [blowsSample(round, flat, -30)] })).work).toBe('none');
  });
});

describe('the pan as it stands now', () => {
  it('has the pan pitch of the values that hold now', () => {
    // A whole pan one cent sharp, and afterwards every note brought down by five.
    const all = leadNotes.map((note) => benchReading(round, { note, fundamental: -4 }, 200));
    expect(nowWith([]).panPitch?.cents).toBeCloseTo(1, 1);
    expect(nowWith(all).panPitch?.cents).toBeCloseTo(-4, 1);
  });

  it('judges an octave against its partner as that stands now', () => {
    const open = readingSample(round, { note: 60, octave: 9, rival: 1 }, 90);
    const partner = (fundamental: number) => benchReading(round, { note: 72, fundamental }, 200);
    const octaveOf = (fundamental: number) =>
      noteIn(nowWith([open, partner(fundamental)]), 60).reading?.octave?.centsFromOwn;
    // The line where the partner lies is the partner's.
    expect(octaveOf(9)).toBeCloseTo(1, 1);
    expect(octaveOf(1)).toBeCloseTo(9, 1);
  });

  it('takes a note with a stopgap on it as it was measured', () => {
    const magnet: Stopgap = {
      kind: 'stopgap',
      shape: 1,
      id: recordId('stopgap-1'),
      pan: panId('pan-1'),
      at: instant(mended.at - 1000),
      note: mended.note,
      stopgap: 'magnet',
    };
    expect(noteIn(nowWith([mended], { stopgaps: [magnet] }))).toMatchObject({ standing: 'good' });
  });

  it('is the same whatever the order of the records', () => {
    const readings = [...ofRound, mended];
    const turned = panNow(round, readings.toReversed(), recordsOf(), settings);
    expect({ ...turned, counting: [] }).toEqual({ ...nowWith([mended]), counting: [] });
  });
});
