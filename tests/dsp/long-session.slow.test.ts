// Half an hour of listening: nothing piles up, and the last strike is measured like the first.
import { expect, it } from 'vitest';
import type { Strike } from '../../src/domain/measurement/strike';
import { centsBetween } from '../../src/domain/tuning/units';
import { StrikeListener } from '../../src/dsp/strike-listener';
import { sessionBlock, sessionOf, sessionRate } from '../ear-scenes/session';
import { collectedHeap } from '../memory/collected-heap';
import { anyNote } from './listen-to';

const minutes = 30;
/** When the heap is first looked at: all tables are made by then. */
const settledMinutes = 5;
/** An ear that kept one strike's segment (0.16 MB) a strike would grow by 15 MB; the collector leaves some tenths. */
const mostGrowthMb = 1;

const heapMb = (): number => collectedHeap() / 2 ** 20;

it('a session of half an hour neither grows the heap nor changes what is measured', () => {
  const session = sessionOf(6, { seconds: 60 * minutes, shortest: 10, longest: 22 });
  const listener = new StrikeListener(sessionRate, anyNote);
  const block = new Float32Array(sessionBlock);
  const heard: { kind: number; strike: Strike }[] = [];
  let heapBefore = Number.NaN;
  let strikesElsewhere = 0;
  for (let first = 0; first < 60 * minutes * sessionRate; first += block.length) {
    session.fill(block, first);
    for (const each of listener.push(block)) {
      if (each.kind !== 'strike' || each.provisional) continue;
      const played = session.strikes.find(({ at }) => Math.abs(at - each.at) < 0.1);
      if (played) heard.push({ kind: played.kind, strike: each });
      else strikesElsewhere++;
    }
    if (Number.isNaN(heapBefore) && first > 60 * settledMinutes * sessionRate)
      heapBefore = heapMb();
  }
  const growth = heapMb() - heapBefore;
  expect(growth, `heap grew by ${growth.toFixed(2)} MB`).toBeLessThan(mostGrowthMb);

  expect(strikesElsewhere).toBe(0);
  expect(heard.length).toBeGreaterThan(0.95 * session.strikes.length);
  for (const { kind, strike } of heard) {
    const first = heard.find((each) => each.kind === kind)?.strike ?? strike;
    expect(strike.note).toBe(first.note);
    // The room's noise differs: three standard errors of a difference, and a hundred strikes to compare.
    const limit = 4 * Math.hypot(strike.fundamental.sigmaCents, first.fundamental.sigmaCents);
    const moved = Math.abs(centsBetween(first.fundamental.hz, strike.fundamental.hz));
    expect(moved, `moved ${moved.toFixed(4)} cent at ${strike.at.toFixed(0)} s`).toBeLessThan(
      limit,
    );
  }
});
