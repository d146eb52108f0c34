import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { makePanCard } from '../../../src/domain/rack/make-pan-card';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import {
  type PanRecords,
  panId,
  recordId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { newestFinishedRounds } from '../../../src/domain/rounds/finished-rounds';
import { resultOf } from '../../../src/domain/rounds/result-of-round';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, instant } from '../../../src/domain/tuning/units';
import { sampleEdit, samplePanRecords } from '../../storage/rack/rack-sample';
import { panFieldsSample } from '../records/pan-fields-sample';
import { benchReading, blowsSample } from '../rounds/bench-sample';
import { leadNotes } from '../rounds/result-sample';
import { endSample, markSample, readingSample, startSample } from '../rounds/round-sample';

const settings = { a4: hertz(440), reference: 'band', limits: usualTolerances } as const;
const fields = panFieldsSample({
  name: 'Lead 3',
  owner: 'the band',
  maker: 'unknown',
  serial: '17',
  finish: 'chrome',
});
const recordsOf = (more: Partial<PanRecords> = {}): PanRecords =>
  samplePanRecords({ edits: [{ ...sampleEdit('edit-1', ''), fields }], ...more });

const before = startSample({ day: 0 });
const last = startSample({ day: 100, conditions: { standing: 'unloaded' } });
const open = startSample({ day: 110 });
const readings = [
  ...leadNotes.map((note, k) => readingSample(before, { note, fundamental: 0 }, k)),
  ...leadNotes.map((note, k) =>
    readingSample(last, { note, fundamental: note === 64 ? -20 : note === 62 ? 35 : 1 }, k),
  ),
  readingSample(open, { note: 60, fundamental: 49 }),
];
const rounds = {
  rounds: [open, before, last],
  ends: [endSample(before), endSample(last)],
};

describe('the card of a pan', () => {
  it('says what the newest finished round found', () => {
    const card = makePanCard(recordsOf(rounds), readings, settings);
    expect(card).toMatchObject({
      name: 'Lead 3',
      layoutName: lowCLead.name,
      noteCount: 29,
      lastRoundAt: last.at,
      isProvisional: true,
      openRound: roundOf(open),
      standings: { good: 27, playable: 0, out: 1, avoid: 1, unread: 0 },
      worst: [62, 64],
      hasConflict: false,
    });
    expect(card.panPitch).toBeCloseTo(1, 1);
    // 35 cents off: 10, 20 off: 4. The mean change since the round before is under 3 cents and says nothing.
    expect(card.reasons.map(({ kind }) => kind)).toEqual(['avoid', 'out']);
    expect(card.need).toBeCloseTo(14, 1);
  });

  it('says how its notes stand since they were worked on, and counts no drift of that', () => {
    const mended = [62, 64].map((note) => benchReading(last, { note, fundamental: 2 }, 300));
    const was = makePanCard(recordsOf(rounds), readings, settings);
    const blows = [62, 60].map((note) => blowsSample(last, note, 250));
    const card = makePanCard(recordsOf({ ...rounds, blows }), [...readings, ...mended], settings);
    expect(was.worked).toEqual([]);
    expect(card.worked).toEqual([60, 62]);
    expect(card).toMatchObject({
      lastRoundAt: last.at,
      standings: { good: 29, playable: 0, out: 0, avoid: 0, unread: 0 },
      worst: [],
    });
    // What the notes did by themselves from round to round stays.
    expect(card.reasons).toEqual(was.reasons.filter(({ kind }) => kind === 'drift'));
  });

  it('looks no different after a round of few notes, but for those notes', () => {
    const few = startSample({ day: 120 });
    const heard = [60, 65].map((note, k) => readingSample(few, { note, fundamental: 30 }, k));
    const was = makePanCard(recordsOf(rounds), readings, settings);
    const records = recordsOf({
      rounds: [...rounds.rounds, few],
      ends: [...rounds.ends, endSample(few)],
    });
    const card = makePanCard(records, [...readings, ...heard], settings);
    expect(card.lastRoundAt).toBe(few.at);
    expect(was.standings).toEqual({ good: 27, playable: 0, out: 1, avoid: 1, unread: 0 });
    expect(card.standings).toEqual({ good: 25, playable: 0, out: 3, avoid: 1, unread: 0 });
    expect(card.panPitch).toBeCloseTo(was.panPitch ?? 0, 0);
    // The drift is that of the two rounds of many notes, and says from how many it comes.
    const moved = readings.map((reading) =>
      reading.round === roundOf(last)
        ? readingSample(last, { note: reading.note, fundamental: reading.note % 2 ? 6 : -6 }, 1)
        : reading,
    );
    const driftOf = ({ reasons }: PanCard) => reasons.filter(({ kind }) => kind === 'drift');
    const drift = driftOf(makePanCard(recordsOf(rounds), moved, settings));
    expect(drift).toMatchObject([{ from: 29 }]);
    expect(driftOf(makePanCard(records, [...moved, ...heard], settings))).toEqual(drift);
  });

  it('counts no drift from the few notes that two rounds have in common', () => {
    const half = startSample({ day: 120 });
    const other = startSample({ day: 130 });
    const [low, high] = [leadNotes.slice(0, 16), leadNotes.slice(13)];
    const records = recordsOf({ rounds: [half, other], ends: [endSample(half), endSample(other)] });
    const read = [
      ...low.map((note, k) => readingSample(half, { note, fundamental: 0 }, k)),
      ...high.map((note, k) => readingSample(other, { note, fundamental: note % 2 ? 9 : -9 }, k)),
    ];
    const card = makePanCard(records, read, settings);
    expect(card.reasons.map(({ kind }) => kind)).not.toContain('drift');
  });

  it('before the first round knows the pan and its marks only', () => {
    const card = makePanCard(recordsOf({ marks: [markSample(60, 'cracked')] }), [], settings);
    expect(card).toMatchObject({
      lastRoundAt: null,
      openRound: null,
      panPitch: null,
      standings: { good: 0, playable: 0, out: 0, avoid: 1, unread: 28 },
      reasons: [{ kind: 'cracked', notes: [60] }],
    });
  });

  it('is made from the two newest finished rounds, not from open, left or erased ones', () => {
    expect(newestFinishedRounds(recordsOf(rounds))).toEqual([last, before]);
    const left = { ...rounds, ends: [endSample(before), endSample(last, 'left')] };
    expect(newestFinishedRounds(recordsOf(left))).toEqual([before]);
    const erasure = {
      kind: 'erasure',
      shape: 1,
      id: recordId('erasure-1'),
      pan: panId('pan-1'),
      at: instant(5),
      target: last.id,
    } as const;
    const erased = recordsOf({ ...rounds, erasures: [erasure] });
    expect(newestFinishedRounds(erased)).toEqual([before]);
    expect(makePanCard(erased, readings, settings).lastRoundAt).toBe(before.at);
  });

  it('is judged at the pan’s own A4 where it has one', () => {
    const [edit] = recordsOf().edits;
    if (!edit) throw new Error('no edit');
    const own = recordsOf({
      ...rounds,
      edits: [{ ...edit, fields: { ...fields, a4: hertz(442) } }],
    });
    // A442 = +7.851 cents, by arithmetic.
    expect(makePanCard(own, readings, settings).panPitch).toBeCloseTo(1 - 7.851, 1);
  });

  it('is the same whatever the order of the records', () => {
    const card = makePanCard(recordsOf(rounds), readings, settings);
    const turned = recordsOf({
      rounds: [...rounds.rounds].reverse(),
      ends: [...rounds.ends].reverse(),
    });
    expect(makePanCard(turned, [...readings].reverse(), settings)).toEqual(card);
  });
});

describe('the result of one round', () => {
  it('has the marks that held until the next round, not those of today', () => {
    const dead = { ...markSample(60, 'dead'), at: instant(last.at + 1000) };
    const records = recordsOf({
      rounds: [before, last],
      ends: [endSample(before), endSample(last)],
      marks: [dead],
    });
    const standing = (start: typeof last) =>
      resultOf(start, readings, records, settings).notes.find(({ note }) => note === 60)?.standing;
    expect(standing(last)).toBe('avoid');
    expect(standing(before)).toBe('good');
  });
});
