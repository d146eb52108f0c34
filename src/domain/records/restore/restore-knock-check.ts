// A knock check and a stopgap as they were stored. A look that is bad is left out alone: nobody looked.

import type { ImpactPlace, ImpactPoint } from '../impact-place';
import { longestOfKnock } from '../longest-texts';
import { lookAnswers, lookKinds } from '../look-kinds';
import type { KnockCheck, Look, Stopgap } from '../rack-records';
import { type FieldRules, fieldsOf, needed, orElse } from './field-rules';
import { attachmentIdRule, headRules, noteRule, roundIdRule } from './record-head';
import {
  bad,
  listOf,
  numberWithin,
  oneOf,
  orNull,
  plainNumber,
  type Rule,
  text,
  wholeWithin,
} from './value-rules';

/** Far above any pan: a set of twelve basses has 12 drums. */
const mostDrums = 24;
/** Leaves room for looks that a later version may ask for (chosen, no source). */
const mostLooks = 50;

const lookRules: FieldRules<Look> = {
  look: needed(oneOf(lookKinds)),
  answer: needed(oneOf(lookAnswers)),
  photo: orElse(orNull(attachmentIdRule), null),
};

const onNoteRules: FieldRules<Extract<ImpactPlace, { kind: 'note' }>> = {
  kind: needed(oneOf(['note'])),
  note: needed(noteRule),
};

const atPointRules: FieldRules<ImpactPoint> = {
  kind: needed(oneOf(['point'])),
  drum: needed(wholeWithin(plainNumber, 0, mostDrums - 1)),
  clock: needed(numberWithin(plainNumber, 0, 12)),
  radius: needed(numberWithin(plainNumber, 0, 1)),
};

const onNoteRule = fieldsOf(onNoteRules);
const atPointRule = fieldsOf(atPointRules);

const impactRule: Rule<ImpactPlace> = (stored, repairs) => {
  if (typeof stored !== 'object' || stored === null) return bad;
  return 'kind' in stored && stored.kind === 'note'
    ? onNoteRule(stored, repairs)
    : atPointRule(stored, repairs);
};

const knockCheckRules: FieldRules<KnockCheck> = {
  ...headRules,
  kind: needed(oneOf(['knock-check'])),
  round: orElse(orNull(roundIdRule), null),
  looks: orElse(listOf(fieldsOf(lookRules), mostLooks), []),
  impact: orElse(orNull(impactRule), null),
  remarks: orElse(text(longestOfKnock.remarks), ''),
};

const stopgapRules: FieldRules<Stopgap> = {
  ...headRules,
  kind: needed(oneOf(['stopgap'])),
  note: needed(noteRule),
  stopgap: needed(oneOf(['magnet', 'none'])),
};

export const knockCheckRule = fieldsOf(knockCheckRules);
export const stopgapRule = fieldsOf(stopgapRules);
