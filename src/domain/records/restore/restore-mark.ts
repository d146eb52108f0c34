// A mark on a note, and an erasure, as they were stored.

import type { Erasure, Mark } from '../rack-records';
import { type FieldRules, fieldsOf, needed, optional, orElse } from './field-rules';
import { headRules, noteRule, recordIdRule, roundIdRule } from './record-head';
import { refusedRule } from './restore-refused';
import { oneOf, orNull } from './value-rules';

const markRules: FieldRules<Mark> = {
  ...headRules,
  kind: needed(oneOf(['mark'])),
  round: orElse(orNull(roundIdRule), null),
  note: needed(noteRule),
  mark: needed(oneOf(['dead', 'buzzing', 'cracked', 'skipped', 'none'])),
  refused: optional(refusedRule),
};

const erasureRules: FieldRules<Erasure> = {
  ...headRules,
  kind: needed(oneOf(['erasure'])),
  target: needed(recordIdRule),
};

export const markRule = fieldsOf(markRules);
export const erasureRule = fieldsOf(erasureRules);
