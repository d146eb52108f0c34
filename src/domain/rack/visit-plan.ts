// Which pans a tuner should see first when the visit has only so many hours.

import type { Instant } from '../tuning/units';
import type { PanCard } from './pan-card';
import { inRackOrder } from './rack-order';
import { type NeedReason, needNow } from './tuner-need';

/** Common practice, no source: a blend and fine tuning of one pan. */
export const usualHoursOfPan = 1.5;

export interface PlannedPan {
  readonly card: PanCard;
  /** Heaviest first, those that time adds among them. */
  readonly reasons: readonly NeedReason[];
}

export interface VisitPlan {
  /** As many as the hours allow, those most in need first. */
  readonly inTime: readonly PlannedPan[];
  /** Those that need the tuner too, but for which no hours are left. */
  readonly later: readonly PlannedPan[];
  /** Those that nothing speaks for. */
  readonly fine: readonly PanCard[];
}

/** The order of a visit of `hours`, at `hoursOfPan` each; both more than 0. Pans off the rack are left out. */
export function visitPlan(
  cards: readonly PanCard[],
  { hours, hoursOfPan }: { readonly hours: number; readonly hoursOfPan: number },
  now: Instant,
): VisitPlan {
  const ordered = inRackOrder(
    cards.filter(({ isRemoved }) => !isRemoved),
    'need',
    now,
  );
  const needy: PlannedPan[] = [];
  const fine: PanCard[] = [];
  for (const card of ordered) {
    const { need, reasons } = needNow(card, now);
    if (need > 0) needy.push({ card, reasons });
    else fine.push(card);
  }
  // Tolerance of a tenth of a minute, so that rounding does not send a pan home.
  const fits = Math.floor(hours / hoursOfPan + 1e-3);
  return { inTime: needy.slice(0, fits), later: needy.slice(fits), fine };
}
