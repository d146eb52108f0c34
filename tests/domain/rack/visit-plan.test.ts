import { describe, expect, it } from 'vitest';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import { usualHoursOfPan, visitPlan } from '../../../src/domain/rack/visit-plan';
import { panId } from '../../../src/domain/records/rack-records';
import { instant } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { sampleCard } from '../../storage/rack/rack-sample';
import { day } from '../rounds/round-sample';

const now = instant(1000 * day);
const card = (name: string, need: number, more: Partial<PanCard> = {}): PanCard => ({
  ...sampleCard(panId(name)),
  name,
  lastRoundAt: instant(now - 10 * day),
  need,
  reasons: need > 0 ? [{ kind: 'pan-pitch', cents: need } as PanCard['reasons'][number]] : [],
  ...more,
});
const rack = [card('A', 0), card('B', 3), card('C', 40), card('D', 9), card('E', 4)];
const namesOf = (cards: readonly { readonly card: PanCard }[]) =>
  cards.map((each) => each.card.name);

describe('the plan of a tuner’s visit', () => {
  it('takes the pans in most need first, as many as there are hours for', () => {
    // 4 hours at 1.5 a pan: two whole pans.
    const plan = visitPlan(rack, { hours: 4, hoursOfPan: usualHoursOfPan }, now);
    expect(namesOf(plan.inTime)).toEqual(['C', 'D']);
    expect(namesOf(plan.later)).toEqual(['E', 'B']);
    expect(plan.fine.map(({ name }) => name)).toEqual(['A']);
  });

  it('fits as many more where less time goes into each', () => {
    expect(namesOf(visitPlan(rack, { hours: 4, hoursOfPan: 1 }, now).inTime)).toHaveLength(4);
    expect(namesOf(visitPlan(rack, { hours: 0.9, hoursOfPan: 0.3 }, now).inTime)).toHaveLength(3);
    expect(namesOf(visitPlan(rack, { hours: 1, hoursOfPan: 1.5 }, now).inTime)).toEqual([]);
  });

  it('gives the reason of each, an old round among them', () => {
    const old = card('Old', 0, { lastRoundAt: instant(now - 400 * day) });
    const [first] = visitPlan([old], { hours: 2, hoursOfPan: 1 }, now).inTime;
    expect(first?.reasons.map(({ kind }) => kind)).toEqual(['old-round']);
  });

  it('leaves out pans that are off the rack', () => {
    const off = card('Off', 90, { isRemoved: true });
    expect(namesOf(visitPlan([...rack, off], { hours: 2, hoursOfPan: 2 }, now).inTime)).toEqual([
      'C',
    ]);
  });

  it('has every pan of the rack in one place, whatever the hours', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(30), { maxLength: 40 }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (needs, hours, hoursOfPan) => {
          const cards = needs.map((need, k) => card(`pan ${k}`, need));
          const { inTime, later, fine } = visitPlan(cards, { hours, hoursOfPan }, now);
          const all = [...inTime, ...later].map((each) => each.card).concat(fine);
          expect(new Set(all)).toEqual(new Set(cards));
          expect(all).toHaveLength(cards.length);
          expect(inTime.length * hoursOfPan).toBeLessThanOrEqual(hours + 0.001 * hoursOfPan + 1e-9);
        },
      ),
    );
  });
});
