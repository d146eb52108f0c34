// A visit of a professional tuner as it was stored.

import { longestOfVisit } from '../longest-texts';
import type { TunerVisit } from '../rack-records';
import { type FieldRules, fieldsOf, needed, orElse } from './field-rules';
import { headRules, instantRule } from './record-head';
import { oneOf, orNull, text, trueOrFalse } from './value-rules';

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

export const tunerVisitRule = fieldsOf(tunerVisitRules);
