// A visit of a professional tuner as it was stored.

import { longestOfVisit } from '../longest-texts';
import type { TunerVisit } from '../rack-records';
import { type FieldRules, fieldsOf, needed, orElse } from './field-rules';
import { headRules, instantRule } from './record-head';
import { oneOf, orNull, type Rule, text, trueOrFalse } from './value-rules';

const tunerVisitRules: FieldRules<TunerVisit> = {
  ...headRules,
  kind: needed(oneOf(['tuner-visit'])),
  visitedAt: needed(instantRule),
  who: orElse(text(longestOfVisit.who), ''),
  done: orElse(text(longestOfVisit.done), ''),
  remarks: orElse(text(longestOfVisit.remarks), ''),
  nextVisit: orElse(orNull(instantRule), null),
  // Where it is not known whether the pan was tuned, nothing is compared with a day on which it may not have been.
  startsBaseline: orElse(trueOrFalse, false),
};

const wholeVisitRule = fieldsOf(tunerVisitRules);

/**
 * An older app took days of any year and then could not read the visit any more ("0026"): it stands on the day on
 * which it was written down, rather than being lost.
 */
export const tunerVisitRule: Rule<TunerVisit> = (stored, repairs) => {
  if (!isOfTooEarly(stored)) return wholeVisitRule(stored, repairs);
  repairs.add('visitedAt');
  return wholeVisitRule({ ...stored, visitedAt: stored.at }, repairs);
};

const isOfTooEarly = (stored: unknown): stored is { readonly at: unknown } => {
  if (typeof stored !== 'object' || stored === null || !('visitedAt' in stored)) return false;
  return 'at' in stored && Number.isInteger(stored.visitedAt) && Number(stored.visitedAt) < 0;
};
