// The beginning and the end of a round as they were stored.
import { highestA4, lowestA4, standardA4 } from '../../tuning/equal-temperament';
import { hertz } from '../../tuning/units';
import type { RoundConditions, RoundEnd, RoundStart } from '../rack-records';
import { type FieldRules, fieldsOf, needed, orElse } from './field-rules';
import { headRules, noteRule, roundIdRule } from './record-head';
import { listOf, numberWithin, oneOf, orNull, plainNumber } from './value-rules';

/** Far above any pan (chosen, no source). */
const mostNotes = 256;
/** Air temperatures in which anybody measures a pan, degrees Celsius. */
const temperatures = { lowest: -40, highest: 70 };

const conditionRules: FieldRules<RoundConditions> = {
  temperature: orElse(
    orNull(numberWithin(plainNumber, temperatures.lowest, temperatures.highest)),
    null,
  ),
  standing: orElse(orNull(oneOf(['settled', 'unloaded', 'sun'])), null),
};

const roundStartRules: FieldRules<RoundStart> = {
  ...headRules,
  kind: needed(oneOf(['round'])),
  way: orElse(oneOf(['guided', 'free', 'quick']), 'free'),
  order: orElse(listOf(noteRule, mostNotes), []),
  conditions: orElse(fieldsOf(conditionRules), { temperature: null, standing: null }),
  a4: orElse(numberWithin(hertz, lowestA4, highestA4), standardA4),
};

const roundEndRules: FieldRules<RoundEnd> = {
  ...headRules,
  kind: needed(oneOf(['round-end'])),
  round: needed(roundIdRule),
  ending: orElse(oneOf(['finished', 'left']), 'left'),
};

export const roundStartRule = fieldsOf(roundStartRules);
export const roundEndRule = fieldsOf(roundEndRules);
