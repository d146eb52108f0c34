// A reading as it was stored: bad strikes are left out, and without any left it is no reading.

import type { ReadingRecord, Taking } from '../rack-records';
import type { StrikeRecord } from '../strike-record';
import { type FieldRules, fieldsOf, needed, optional, orElse } from './field-rules';
import { attachmentIdRule, headRules, noteRule, roundIdRule } from './record-head';
import { refusedRule } from './restore-refused';
import { strikeRule } from './restore-strike';
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

const most = { strikes: 64, processing: 20 };

/** Stands in where it cannot be read how the sound was taken: a sample rate of 0 means that it is not known. */
const unknownTaking: Taking = {
  source: 'microphone',
  sampleRate: 0,
  processing: [],
  gaps: 0,
  appVersion: '',
};

const takingRules: FieldRules<Taking> = {
  source: orElse(oneOf(['microphone', 'file', 'practice']), unknownTaking.source),
  sampleRate: orElse(numberWithin(plainNumber, 0, 1e6), unknownTaking.sampleRate),
  processing: orElse(listOf(text(200), most.processing), unknownTaking.processing),
  gaps: orElse(wholeWithin(plainNumber, 0, 1e9), unknownTaking.gaps),
  appVersion: orElse(text(64), unknownTaking.appVersion),
};

const strikesRule: Rule<readonly StrikeRecord[]> = (stored, repairs) => {
  const strikes = listOf(strikeRule, most.strikes)(stored, repairs);
  return strikes === bad || strikes.length === 0 ? bad : strikes;
};

const readingRules: FieldRules<ReadingRecord> = {
  ...headRules,
  kind: needed(oneOf(['reading'])),
  round: orElse(orNull(roundIdRule), null),
  note: needed(noteRule),
  strikes: needed(strikesRule),
  taking: orElse(fieldsOf(takingRules), unknownTaking),
  refused: optional(refusedRule),
  sound: orElse(orNull(attachmentIdRule), null),
};

export const readingRule = fieldsOf(readingRules);
