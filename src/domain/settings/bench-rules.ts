// What the settings hold for the bench, as it was stored. Kept apart from the defaults, which are needed at the first
// paint.
import {
  farthestRange,
  type ProfessionalLimits,
  usualProfessionalLimits,
} from '../advice/professional-limits';
import type { WorkPlan } from '../bench/work-plan';
import { blowFirmnesses, blowPlaces, blowSides } from '../records/blow-places';
import type { LoggedBlows } from '../records/rack-records';
import { type FieldRules, fieldsOf, needed, orElse, orUsual } from '../records/restore/field-rules';
import { noteRule, panIdRule, roundIdRule } from '../records/restore/record-head';
import {
  listOf,
  numberWithin,
  oneOf,
  orNull,
  plainNumber,
  trueOrFalse,
} from '../records/restore/value-rules';
import { cents } from '../tuning/units';
import { type BenchSettings, usualBenchSettings } from './bench-settings';

/** Notes of one plan at most: every note of MIDI. */
const mostWorkNotes = 128;

const professionalRules: FieldRules<ProfessionalLimits> = {
  farthest: orElse(
    numberWithin(cents, farthestRange.least, farthestRange.most),
    usualProfessionalLimits.farthest,
  ),
  withoutOctave: orElse(trueOrFalse, usualProfessionalLimits.withoutOctave),
  shortestDecay: orElse(numberWithin(plainNumber, 0, 1), usualProfessionalLimits.shortestDecay),
  falling: orElse(trueOrFalse, usualProfessionalLimits.falling),
};

const lastBlowsRules: FieldRules<LoggedBlows> = {
  place: needed(oneOf(blowPlaces)),
  side: needed(oneOf(blowSides)),
  firmness: needed(oneOf(blowFirmnesses)),
};

const workRules: FieldRules<WorkPlan> = {
  pan: needed(panIdRule),
  notes: needed(listOf(noteRule, mostWorkNotes)),
  round: needed(roundIdRule),
};

export const benchRules: FieldRules<BenchSettings> = {
  isTrained: orUsual(trueOrFalse, usualBenchSettings.isTrained),
  suggestsBlows: orUsual(trueOrFalse, usualBenchSettings.suggestsBlows),
  professional: orUsual(fieldsOf(professionalRules), usualBenchSettings.professional),
  lastBlows: orUsual(orNull(fieldsOf(lastBlowsRules)), usualBenchSettings.lastBlows),
  repeatsBlows: orUsual(trueOrFalse, usualBenchSettings.repeatsBlows),
  work: orUsual(orNull(fieldsOf(workRules)), usualBenchSettings.work),
};
