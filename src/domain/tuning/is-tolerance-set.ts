// The check of tolerances that come from storage or from a form.
import { type Limits, type ToleranceSet, toleranceSteps } from './tolerances';

/** Cents, own choice: wider limits would call another note in tune. */
export const narrowestLimit = 1;
export const widestLimit = 100;

/** Limits of at least 1 cent that do not narrow from good to playable to out, and a MIDI note. */
export function isToleranceSet(value: unknown): value is ToleranceSet {
  if (!isObject(value)) return false;
  const highest = value['highestWithPartials'];
  if (!Number.isInteger(highest) || Number(highest) < 0 || Number(highest) > 127) return false;
  let narrower: Limits | null = null;
  for (const step of toleranceSteps) {
    const limits = value[step];
    if (!isLimits(limits)) return false;
    if (narrower && (limits.main < narrower.main || limits.third < narrower.third)) return false;
    narrower = limits;
  }
  return true;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const isLimits = (value: unknown): value is Limits =>
  isObject(value) && isLimit(value['main']) && isLimit(value['third']);

const isLimit = (value: unknown): boolean =>
  typeof value === 'number' && value >= narrowestLimit && value <= widestLimit;
