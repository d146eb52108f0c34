// The rules for what all records have, and for the names by which records refer to each other.
import { type Instant, instant, midiNote } from '../../tuning/units';
import { attachmentId, type PanId, panId, type RecordId, recordId, roundId } from '../rack-records';
import { lastTurn } from '../record-order';
import { type FieldRules, needed, optional } from './field-rules';
import { bad, identity, oneOf, type Rule, wholeWithin } from './value-rules';

/** Last moment a date of the language can hold, ms since 1970 (ECMAScript, "Time Values and Time Range"). */
const lastInstant = 8.64e15;

export const panIdRule = identity(panId);
export const roundIdRule = identity(roundId);
export const recordIdRule = identity(recordId);
export const attachmentIdRule = identity(attachmentId);
export const noteRule = wholeWithin(midiNote, 0, 127);
export const instantRule = wholeWithin(instant, 0, lastInstant);

/** What records and attachments begin with. */
interface FileHead {
  readonly shape: 1;
  readonly id: RecordId;
  readonly pan: PanId;
  readonly at: Instant;
}

export const fileHeadRules: FieldRules<FileHead> = {
  shape: needed(oneOf([1])),
  id: needed(recordIdRule),
  pan: needed(panIdRule),
  at: needed(instantRule),
};

const digestShape = /^[0-9a-f]{16}$/;
const digestRule: Rule<string> = (stored) =>
  typeof stored === 'string' && digestShape.test(stored) ? stored : bad;

interface Head extends FileHead {
  readonly turn?: Instant;
  readonly digest?: string;
}

export const headRules: FieldRules<Head> = {
  ...fileHeadRules,
  turn: optional(wholeWithin(instant, 0, lastTurn)),
  digest: optional(digestRule),
};
