// One strike of a reading as it was stored. Without its fundamental it is nothing; any other part can be missed.
import type { HeardWindow, RingingLine } from '../../measurement/strike';
import { cents, decibels, hertz, seconds } from '../../tuning/units';
import type { LineRecord, StrikeRecord } from '../strike-record';
import { type FieldRules, fieldsOf, needed, optional, orElse } from './field-rules';
import { noteRule } from './record-head';
import { listOf, numberWithin, oneOf, orNull, trueOrFalse } from './value-rules';

/** Far more lines than the ear lists (chosen, no source). */
const mostRinging = 64;

/** From below the lowest bass pan to above the double octave of the highest lead, with room to spare. */
const hzRule = numberWithin(hertz, 10, 24_000);
/** Relative to full scale; digital silence is taken as −400 at most in the ear. */
const levelRule = numberWithin(decibels, -500, 100);

const windowRules: FieldRules<HeardWindow> = {
  from: needed(numberWithin(seconds, 0, 1_000)),
  to: needed(numberWithin(seconds, 0, 1_000)),
};

const lineRules: FieldRules<LineRecord> = {
  hz: needed(hzRule),
  sigmaCents: needed(numberWithin(cents, 0, 1_200)),
  decaySeconds: needed(numberWithin(seconds, 0, 1_000)),
  levelDb: needed(levelRule),
  window: optional(fieldsOf(windowRules)),
};

type Rival = NonNullable<StrikeRecord['octaveRival']>;
type Third = NonNullable<StrikeRecord['third']>;

const rivalRules: FieldRules<Rival> = { ...lineRules, note: orElse(orNull(noteRule), null) };
const thirdRules: FieldRules<Third> = {
  ...lineRules,
  kind: needed(oneOf(['twelfth', 'double-octave'])),
};
const ringingRules: FieldRules<RingingLine> = {
  hz: needed(hzRule),
  levelDb: needed(levelRule),
  note: orElse(orNull(noteRule), null),
  partial: orElse(orNull(oneOf([1, 2, 3, 4])), null),
};

const strikeRules: FieldRules<StrikeRecord> = {
  fundamental: needed(fieldsOf(lineRules)),
  fundamentalRival: optional(orNull(fieldsOf(lineRules))),
  isInferred: orElse(trueOrFalse, false),
  octave: orElse(orNull(fieldsOf(lineRules)), null),
  octaveRival: orElse(orNull(fieldsOf(rivalRules)), null),
  third: orElse(orNull(fieldsOf(thirdRules)), null),
  thirdRival: optional(orNull(fieldsOf(lineRules))),
  // The pitch right after the onset may be far off, up to ten octaves where the fit found next to nothing.
  glideCents: orElse(numberWithin(cents, -12_000, 12_000), cents(0)),
  peakDb: orElse(levelRule, decibels(0)),
  // A strike of unknown loudness counts for less, as a soft one does.
  loudness: orElse(oneOf(['soft', 'good', 'loud']), 'soft'),
  buzzDb: optional(levelRule),
  alsoRinging: orElse(listOf(fieldsOf(ringingRules), mostRinging), []),
};

export const strikeRule = fieldsOf(strikeRules);
