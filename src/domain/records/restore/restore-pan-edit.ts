// An edit of a pan as it was stored. A bad field is left out: what it would have replaced then still holds.

import { panFamilies } from '../../pans/pan-family';
import { highestA4, lowestA4 } from '../../tuning/equal-temperament';
import { hertz } from '../../tuning/units';
import type { PanEdit, PanFields } from '../rack-records';
import { type FieldRules, fieldsOf, needed, optional, orElse } from './field-rules';
import { attachmentIdRule, headRules, recordIdRule } from './record-head';
import { layoutRule } from './restore-layout';
import { listOf, numberWithin, oneOf, orNull, text, trueOrFalse, visibleText } from './value-rules';

/** Longest texts about a pan, characters. The screens' fields take no more. */
export const longestOf = {
  name: 80,
  owner: 200,
  maker: 200,
  serial: 200,
  finish: 200,
  remarks: 10_000,
  wanted: 2_000,
  wantedBy: 200,
} as const;

const mostReplaced = 1_000;

const panFieldRules: FieldRules<PanFields> = {
  name: optional(visibleText(longestOf.name)),
  family: optional(oneOf(panFamilies)),
  layout: optional(layoutRule),
  owner: optional(text(longestOf.owner)),
  maker: optional(text(longestOf.maker)),
  serial: optional(text(longestOf.serial)),
  finish: optional(text(longestOf.finish)),
  remarks: optional(text(longestOf.remarks)),
  a4: optional(orNull(numberWithin(hertz, lowestA4, highestA4))),
  photo: optional(orNull(attachmentIdRule)),
  wanted: optional(text(longestOf.wanted)),
  wantedBy: optional(text(longestOf.wantedBy)),
  isRemoved: optional(trueOrFalse),
};

const panEditRules: FieldRules<PanEdit> = {
  ...headRules,
  kind: needed(oneOf(['pan-edit'])),
  fields: needed(fieldsOf<Partial<PanFields>>(panFieldRules)),
  replaces: orElse(listOf(recordIdRule, mostReplaced), []),
};

export const panEditRule = fieldsOf(panEditRules);
