// What the user calls good, playable and out, as it was stored.
import { type FieldRules, fieldsOf, orElse } from '../records/restore/field-rules';
import { noteRule } from '../records/restore/record-head';
import { bad, numberWithin, type Rule } from '../records/restore/value-rules';
import { isToleranceSet, narrowestLimit, widestLimit } from '../tuning/is-tolerance-set';
import {
  type Limits,
  type ToleranceSet,
  type ToleranceStep,
  usualTolerances,
} from '../tuning/tolerances';
import { cents } from '../tuning/units';

const limitRule = numberWithin(cents, narrowestLimit, widestLimit);

const limitsRules = (step: ToleranceStep): FieldRules<Limits> => ({
  main: orElse(limitRule, usualTolerances[step].main),
  third: orElse(limitRule, usualTolerances[step].third),
});

const limitsOf = (step: ToleranceStep) =>
  orElse(fieldsOf(limitsRules(step)), usualTolerances[step]);

const setRule = fieldsOf<ToleranceSet>({
  good: limitsOf('good'),
  playable: limitsOf('playable'),
  out: limitsOf('out'),
  highestWithPartials: orElse(noteRule, usualTolerances.highestWithPartials),
});

/** Each bad limit alone becomes the usual one; a set that narrows on the way out is none. */
export const toleranceSetRule: Rule<ToleranceSet> = (stored, repairs) => {
  const set = setRule(stored, repairs);
  return set !== bad && isToleranceSet(set) ? set : bad;
};
