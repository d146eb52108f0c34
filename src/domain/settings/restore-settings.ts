// Checks settings, whatever storage holds: each bad part by itself falls back to what is usual, and is named.
import {
  longestTuneName,
  mostTunes,
  type PitchClass,
  pitchClassOf,
  type SavedTune,
  type SetNeeds,
} from '../knock-check/saved-tunes';
import {
  type FieldRules,
  fieldsOf,
  needed,
  optional,
  orElse,
  orUsual,
} from '../records/restore/field-rules';
import { instantRule } from '../records/restore/record-head';
import { Repairs } from '../records/restore/repairs';
import {
  bad,
  listOf,
  numberWithin,
  oneOf,
  orNull,
  plainNumber,
  type Rule,
  text,
  trueOrFalse,
  visibleText,
  wholeWithin,
} from '../records/restore/value-rules';
import { highestA4, lowestA4 } from '../tuning/equal-temperament';
import { references } from '../tuning/reference';
import { hertz } from '../tuning/units';
import { benchRules } from './bench-rules';
import { handsRules } from './hands-rules';
import {
  announcements,
  defaultSettings,
  type LastBackup,
  longestContact,
  type Settings,
  themes,
} from './settings';
import { toleranceSetRule } from './tolerance-rule';

export interface RestoredSettings {
  readonly value: Settings;
  /** What was bad, each part named by its way in ("tunes[2].name"). */
  readonly repairs: readonly string[];
}

const classesRule: Rule<readonly PitchClass[]> = listOf(wholeWithin(pitchClassOf, 0, 11), 12);
const tuneNameRule = visibleText(longestTuneName);

const tuneRules: FieldRules<SavedTune> = {
  name: needed(tuneNameRule),
  notes: needed(classesRule),
};

const needsRules: FieldRules<SetNeeds> = {
  keys: orElse(classesRule, []),
  tunes: orElse(listOf(tuneNameRule, mostTunes), []),
  notes: orElse(classesRule, []),
};

const countRule = wholeWithin(plainNumber, 0, Number.MAX_SAFE_INTEGER);

const backupRules: FieldRules<LastBackup> = {
  at: needed(instantRule),
  readings: needed(countRule),
  changes: optional(countRule),
};

const usual = defaultSettings;

const settingsRules: FieldRules<Settings> = {
  shape: orUsual(() => 1, 1),
  a4: orUsual(numberWithin(hertz, lowestA4, highestA4), usual.a4),
  theme: orUsual(oneOf(themes), usual.theme),
  announcement: orUsual(oneOf(announcements), usual.announcement),
  reference: orUsual(oneOf(references), usual.reference),
  limits: orUsual(toleranceSetRule, usual.limits),
  keepsSound: orUsual(trueOrFalse, usual.keepsSound),
  lastBackup: orUsual(orNull(fieldsOf(backupRules)), usual.lastBackup),
  contact: orUsual(text(longestContact), usual.contact),
  tunes: orUsual(listOf(fieldsOf(tuneRules), mostTunes), usual.tunes),
  setNeeds: orUsual(fieldsOf(needsRules), usual.setNeeds),
  // What each rule may be is judged where the rules are used (`rulesWith`), which is long after the first paint.
  tonightRules: orUsual(fieldsOf({}), usual.tonightRules),
  ...benchRules,
  ...handsRules,
};

const settingsRule = fieldsOf(settingsRules);

/** Valid settings from anything. Never throws; fields of a later version stay as they are. */
export function restoreSettings(stored: unknown): RestoredSettings {
  if (stored === undefined || stored === null) return { value: defaultSettings, repairs: [] };
  const repairs = new Repairs();
  const value = settingsRule(stored, repairs);
  return value === bad
    ? { value: defaultSettings, repairs: ['settings'] }
    : { value, repairs: repairs.list };
}
