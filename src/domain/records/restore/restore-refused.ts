// The refused blows of a reading or a mark as they were stored.

import type { RefusedBlows } from '../rack-records';
import { type FieldRules, fieldsOf, needed } from './field-rules';
import { plainNumber, wholeWithin } from './value-rules';

const countRule = wholeWithin(plainNumber, 0, 1e6);

const refusedRules: FieldRules<RefusedBlows> = {
  knocks: needed(countRule),
  heardAsSeveral: needed(countRule),
};

export const refusedRule = fieldsOf(refusedRules);
