// A set of hammer blows as it was stored; what was logged is known as a whole or not at all.
import { blowFirmnesses, blowPlaces, blowSides } from '../blow-places';
import type { Blows, LoggedBlows } from '../rack-records';
import { type FieldRules, fieldsOf, needed, orElse } from './field-rules';
import { headRules, noteRule, recordIdRule } from './record-head';
import { bad, oneOf, orNull, plainNumber, type Rule, wholeWithin } from './value-rules';

/** More blows than anybody gives a note between two readings (chosen, no source). */
const mostBlows = 1000;

const loggedRules: FieldRules<LoggedBlows> = {
  place: needed(oneOf(blowPlaces)),
  side: needed(oneOf(blowSides)),
  firmness: needed(oneOf(blowFirmnesses)),
};

/** Blows belong to the bench, never to a round. */
const noRound: Rule<null> = (stored) => (stored === null ? null : bad);

const blowsRules: FieldRules<Blows> = {
  ...headRules,
  kind: needed(oneOf(['blows'])),
  round: orElse(noRound, null),
  note: needed(noteRule),
  logged: orElse(orNull(fieldsOf(loggedRules)), null),
  count: orElse(orNull(wholeWithin(plainNumber, 1, mostBlows)), null),
  before: orElse(orNull(recordIdRule), null),
  after: orElse(orNull(recordIdRule), null),
};

export const blowsRule = fieldsOf(blowsRules);
