import { describe, expect, it } from 'vitest';
import { noteMoved, planNow, proposedPlan, withoutNote } from '../../../src/domain/bench/work-plan';
import { panId } from '../../../src/domain/records/rack-records';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { midiNote } from '../../../src/domain/tuning/units';
import { resultSample, wholeLead } from '../rounds/result-sample';

const pan = panId('pan-1');
const off: Readonly<Record<number, number>> = { 64: -9, 76: 14, 72: -30, 60: 8 };
const lead = wholeLead((note) => ({ fundamental: off[note] ?? 1 }));
const planOf = (marks = {}, day = 0) =>
  proposedPlan(pan, resultSample(lead, { marks, day }), usualTolerances);

describe('the plan of work after a round', () => {
  it('holds the notes that are not good, those of one name together', () => {
    // E5 is worse than E4; C5 is worse than C4.
    expect(planOf().notes).toEqual([76, 64, 72, 60]);
  });

  it('leaves dead notes out, and everything on a pan with a crack', () => {
    expect(planOf({ 72: 'dead' }).notes).toEqual([76, 64, 60]);
    expect(planOf({ 67: 'cracked' }).notes).toEqual([]);
  });

  it('can be changed: a note earlier, later or left out, and nothing at the ends', () => {
    const plan = planOf();
    expect(noteMoved(plan, midiNote(72), -1).notes).toEqual([76, 72, 64, 60]);
    expect(noteMoved(plan, midiNote(64), 1).notes).toEqual([76, 72, 64, 60]);
    expect(noteMoved(plan, midiNote(76), -1).notes).toEqual(plan.notes);
    expect(noteMoved(plan, midiNote(60), 1).notes).toEqual(plan.notes);
    expect(withoutNote(plan, midiNote(64)).notes).toEqual([76, 72, 60]);
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
