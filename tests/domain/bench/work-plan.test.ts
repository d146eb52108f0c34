import { describe, expect, it } from 'vitest';
import { noteMoved, planNow, proposedWork, withoutNote } from '../../../src/domain/bench/work-plan';
import { panId } from '../../../src/domain/records/rack-records';
import { panNow, resultNow } from '../../../src/domain/rounds/pan-now';
import { resultOf } from '../../../src/domain/rounds/result-of-round';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, hertz, midiNote } from '../../../src/domain/tuning/units';
import { sampleEdit, samplePanRecords } from '../../storage/rack/rack-sample';
import { benchReading, blowsSample } from '../rounds/bench-sample';
import { resultSample, wholeLead } from '../rounds/result-sample';
import { endSample, type NoteSketch, readingSample, startSample } from '../rounds/round-sample';

const pan = panId('pan-1');
/** E4, E5, E6, C5 and C4. */
const off: Readonly<Record<number, number>> = { 64: -20, 76: 14, 88: -7, 72: -9, 60: 30 };
const lead = wholeLead((note) => ({ fundamental: off[note] ?? 1 }));
const workOf = (marks = {}, day = 0, notes: readonly NoteSketch[] = lead) =>
  proposedWork(pan, resultSample(notes, { marks, day }), usualTolerances);
const planOf = (marks = {}, day = 0) => workOf(marks, day).plan;
const with1 = (note: number, sketch: Omit<NoteSketch, 'note'>): readonly NoteSketch[] =>
  lead.map((each) => (each.note === note ? { ...each, ...sketch } : each));

describe('the order of work that is proposed', () => {
  it('goes through the notes of one name from the highest down, however bad each is', () => {
    expect(planOf().notes).toEqual([88, 76, 64, 72, 60]);
    expect(workOf().strikeFirst).toEqual([]);
  });

  it('leaves dead notes out, and everything on a pan with a crack', () => {
    expect(planOf({ 72: 'dead' }).notes).toEqual([88, 76, 64, 60]);
    expect(workOf({ 67: 'cracked' })).toMatchObject({ plan: { notes: [] }, strikeFirst: [] });
  });

  it('asks for three strikes first where only one was heard', () => {
    const { plan, strikeFirst } = workOf({}, 0, with1(76, { fundamental: 14, strikes: 1 }));
    expect(plan.notes).toEqual([88, 64, 72, 60]);
    expect(strikeFirst).toEqual([76]);
  });

  it('leaves a walking note alone', () => {
    const { plan, strikeFirst } = workOf({}, 0, with1(76, { strikes: [0, -3, -6, -9, -12] }));
    expect(plan.notes).not.toContain(76);
    expect(strikeFirst).toEqual([]);
  });

  it('leaves a top note alone that is within two cents, whatever the limits', () => {
    const limits = { ...usualTolerances, good: { main: cents(1), third: cents(4) } };
    const start = startSample();
    const readings = wholeLead((note) => ({
      fundamental: note === 88 ? -1.8 : note === 86 ? -2.6 : 0,
    })).map((note) => readingSample(start, note));
    const records = samplePanRecords({ edits: [sampleEdit('edit-1', 'Heron')], rounds: [start] });
    const judging = { a4: hertz(440), reference: 'band', limits } as const;
    const result = resultOf(start, readings, records, judging);
    expect(result.worst.map(({ note }) => note)).toEqual([86, 88]);
    expect(proposedWork(pan, result, limits).plan.notes).toEqual([86]);
  });
});

describe('the order of work as the bench goes on', () => {
  const start = startSample();
  const readings = lead.map((note, k) => readingSample(start, note, k + 1));
  const records = samplePanRecords({
    edits: [sampleEdit('edit-1', 'Heron')],
    rounds: [start],
    ends: [endSample(start)],
    blows: [blowsSample(start, 76, 100), blowsSample(start, 62, 110)],
  });
  const judging = { a4: hertz(440), reference: 'band', limits: usualTolerances } as const;
  const workWith = (more: readonly ReturnType<typeof benchReading>[]) => {
    const now = resultNow(panNow(start, [...readings, ...more], records, judging));
    if (!now) throw new Error('no round');
    return proposedWork(pan, now, usualTolerances);
  };

  it('asks for strikes where blows fell after the last reading, also on a note that was good', () => {
    expect(workWith([])).toMatchObject({
      plan: { notes: [88, 64, 72, 60] },
      strikeFirst: [76, 62],
    });
  });

  it('drops what was put right, from the user’s own order too', () => {
    const mended = [76, 62].map((note) => benchReading(start, { note, fundamental: -2 }, 120));
    const { plan, strikeFirst } = workWith(mended);
    expect(plan.notes).toEqual([88, 64, 72, 60]);
    expect(strikeFirst).toEqual([]);
    const own = { ...plan, notes: [60, 76, 64].map(midiNote) };
    expect(planNow(own, plan).notes).toEqual([60, 64]);
  });
});

describe('the plan of work', () => {
  it('can be changed: a note earlier, later or left out, and nothing at the ends', () => {
    const plan = planOf();
    expect(noteMoved(plan, midiNote(72), -1).notes).toEqual([88, 76, 72, 64, 60]);
    expect(noteMoved(plan, midiNote(64), 1).notes).toEqual([88, 76, 72, 64, 60]);
    expect(noteMoved(plan, midiNote(88), -1).notes).toEqual(plan.notes);
    expect(noteMoved(plan, midiNote(60), 1).notes).toEqual(plan.notes);
    expect(withoutNote(plan, midiNote(64)).notes).toEqual([88, 76, 72, 60]);
  });

  it('is the user’s own until another round has shown how the pan stands', () => {
    const proposed = planOf();
    const own = withoutNote(proposed, midiNote(64));
    expect(planNow(own, proposed)).toBe(own);
    expect(planNow(null, proposed)).toBe(proposed);
    const later = planOf({}, 30);
    expect(planNow(own, later)).toBe(later);
    expect(planNow({ ...own, pan: panId('other') }, proposed)).toBe(proposed);
  });
});
