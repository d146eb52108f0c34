// Checks kept cards as they are read. A card only saves time, so if anything is wrong with it, it is made anew.

import { panFamilies } from '../pans/pan-family';
import type { NoteStanding } from '../reading/note-standing';
import { longestOfPan } from '../records/longest-texts';
import { type FieldRules, fieldsOf, needed } from '../records/restore/field-rules';
import { instantRule, noteRule, panIdRule, roundIdRule } from '../records/restore/record-head';
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
  wholeWithin,
} from '../records/restore/value-rules';
import { highestA4, lowestA4 } from '../tuning/equal-temperament';
import { cents, hertz } from '../tuning/units';
import type { PanCard } from './pan-card';
import type { NeedReason } from './tuner-need';

/** Far above any pan and any list of reasons (chosen, no source). */
const mostNotes = 256;
const mostReasons = 20;
const centsRule = numberWithin(cents, -12_000, 12_000);
const countRule = wholeWithin(plainNumber, 0, 100_000);
const notesRule = listOf(noteRule, mostNotes);

const kindRule = <Kind extends string>(kind: Kind) => needed(oneOf([kind]));

type ReasonOf<Kind> = Extract<NeedReason, { kind: Kind }>;

const notesReasonRule = <Kind extends 'cracked' | 'dead' | 'avoid' | 'out' | 'buzzing'>(
  kind: Kind,
): Rule<ReasonOf<Kind>> =>
  fieldsOf({ kind: kindRule(kind), notes: needed(notesRule) } as unknown as FieldRules<
    ReasonOf<Kind>
  >);

const reasonRules: { readonly [Kind in NeedReason['kind']]: Rule<ReasonOf<Kind>> } = {
  cracked: notesReasonRule('cracked'),
  dead: notesReasonRule('dead'),
  avoid: notesReasonRule('avoid'),
  out: notesReasonRule('out'),
  buzzing: notesReasonRule('buzzing'),
  'pan-pitch': fieldsOf({
    kind: kindRule('pan-pitch'),
    cents: needed(centsRule),
    from: needed(countRule),
  }),
  drift: fieldsOf({
    kind: kindRule('drift'),
    cents: needed(centsRule),
    from: needed(countRule),
  }),
  'old-round': fieldsOf({ kind: kindRule('old-round'), lastRoundAt: needed(instantRule) }),
  'never-read': fieldsOf({ kind: kindRule('never-read') }),
};

const reasonRule: Rule<NeedReason> = (stored, repairs) => {
  const kind: unknown = (stored as { readonly kind?: unknown } | null)?.kind;
  if (typeof kind !== 'string' || !Object.hasOwn(reasonRules, kind)) return bad;
  return reasonRules[kind as NeedReason['kind']](stored, repairs);
};

const standingRules: FieldRules<Readonly<Record<NoteStanding, number>>> = {
  good: needed(countRule),
  playable: needed(countRule),
  out: needed(countRule),
  avoid: needed(countRule),
  unread: needed(countRule),
};

const cardRules: FieldRules<PanCard> = {
  version: needed(oneOf([3])),
  judgedBy: needed(text(200)),
  pan: needed(panIdRule),
  name: needed(text(longestOfPan.name)),
  family: needed(oneOf(panFamilies)),
  layoutName: needed(text(200)),
  owner: needed(text(longestOfPan.owner)),
  maker: needed(text(longestOfPan.maker)),
  serial: needed(text(longestOfPan.serial)),
  isRemoved: needed(trueOrFalse),
  hasConflict: needed(trueOrFalse),
  noteCount: needed(countRule),
  lastRoundAt: needed(orNull(instantRule)),
  isProvisional: needed(trueOrFalse),
  openRound: needed(orNull(roundIdRule)),
  standings: needed(fieldsOf(standingRules)),
  worst: needed(listOf(noteRule, 3)),
  worked: needed(notesRule),
  a4: needed(numberWithin(hertz, lowestA4, highestA4)),
  panPitch: needed(orNull(centsRule)),
  stopgaps: needed(notesRule),
  need: needed(numberWithin(plainNumber, 0, Number.MAX_VALUE)),
  reasons: needed(listOf(reasonRule, mostReasons)),
};

const cardRule = fieldsOf(cardRules);

/** A valid card made from anything, or null if anything is wrong with it. Never throws. */
export function restorePanCard(stored: unknown): PanCard | null {
  const repairs = new Repairs();
  const card = cardRule(stored, repairs);
  return card === bad || repairs.list.length > 0 ? null : card;
}
