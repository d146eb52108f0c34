// An edit of a pan as it was stored. A bad field is left out: what it would have replaced then still holds.

import { panFamilies } from '../../pans/pan-family';
import { highestA4, lowestA4 } from '../../tuning/equal-temperament';
import { hertz } from '../../tuning/units';
import { longestOfPan } from '../longest-texts';
import type { PanEdit, PanFields } from '../rack-records';
import { type FieldRules, fieldsOf, needed, optional, orElse } from './field-rules';
import { attachmentIdRule, headRules, recordIdRule } from './record-head';
import { layoutRule } from './restore-layout';
import { listOf, numberWithin, oneOf, orNull, text, trueOrFalse, visibleText } from './value-rules';

/** More edits than replace each other at once anywhere (chosen, no source). */
const mostReplaced = 1_000;

const panFieldRules: FieldRules<PanFields> = {
  name: optional(visibleText(longestOfPan.name)),
  family: optional(oneOf(panFamilies)),
  layout: optional(layoutRule),
  owner: optional(text(longestOfPan.owner)),
  maker: optional(text(longestOfPan.maker)),
  serial: optional(text(longestOfPan.serial)),
  finish: optional(text(longestOfPan.finish)),
  remarks: optional(text(longestOfPan.remarks)),
  a4: optional(orNull(numberWithin(hertz, lowestA4, highestA4))),
  photo: optional(orNull(attachmentIdRule)),
  wanted: optional(text(longestOfPan.wanted)),
  wantedBy: optional(text(longestOfPan.wantedBy)),
  isRemoved: optional(trueOrFalse),
};

const panEditRules: FieldRules<PanEdit> = {
  ...headRules,
  kind: needed(oneOf(['pan-edit'])),
  fields: needed(fieldsOf<Partial<PanFields>>(panFieldRules)),
  replaces: orElse(listOf(recordIdRule, mostReplaced), []),
};

export const panEditRule = fieldsOf(panEditRules);
