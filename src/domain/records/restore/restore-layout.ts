// A pan's own copy of its layout as it was stored. A note place that is bad is left out alone.
import type { Drum, NotePlace, PanLayout } from '../../pans/layout';
import { cents } from '../../tuning/units';
import { type FieldRules, fieldsOf, needed, optional, orElse } from './field-rules';
import { noteRule } from './record-head';
import { listOf, numberWithin, oneOf, plainNumber, type Rule, text } from './value-rules';

/** Far above any pan: a set of twelve basses has 12 drums, a lead some 30 notes on its one. */
const most = { drums: 24, notesOfDrum: 128, doubts: 20 };

const placeRules: FieldRules<NotePlace> = {
  note: needed(noteRule),
  ring: orElse(oneOf(['outer', 'middle', 'centre']), 'outer'),
  clock: needed(numberWithin(plainNumber, -12, 24)),
  radius: needed(numberWithin(plainNumber, 0, 1)),
  along: needed(numberWithin(plainNumber, 0.001, 1)),
  across: needed(numberWithin(plainNumber, 0.001, 1)),
  third: optional(oneOf(['twelfth', 'double-octave', 'none'])),
  offset: optional(numberWithin(cents, -200, 200)),
};

const drumRules: FieldRules<Drum> = {
  name: orElse(text(80), ''),
  notes: needed(listOf(fieldsOf(placeRules), most.notesOfDrum)),
};

const layoutRules: FieldRules<PanLayout> = {
  id: orElse(text(64), ''),
  name: orElse(text(200), ''),
  drums: needed(listOf(fieldsOf(drumRules), most.drums)),
  source: orElse(text(2_000), ''),
  doubts: optional(listOf(text(500), most.doubts)),
};

export const layoutRule: Rule<PanLayout> = fieldsOf(layoutRules);
