// What each note of a pan is good for tonight, and why.

import type { NoteResult } from '../rounds/judged-pan';
import type { Cents, Instant, MidiNote } from '../tuning/units';
import type { NoteAction, TonightRules } from './tonight-rules';

/** Signs of damage that a strike can show. */
export type SignKind = 'no-octave' | 'no-third' | 'choked' | 'walking' | 'buzzing' | 'new-doublet';

export interface HeardSign {
  readonly kind: SignKind;
}

export type NoteReason =
  /** From the pan as a whole, which often shifts a little in a fall; from the band where the pan pitch is unknown. */
  | { readonly kind: 'off'; readonly cents: Cents }
  /** The octave from its own note. */
  | { readonly kind: 'octave-off'; readonly cents: Cents }
  | { readonly kind: 'sign'; readonly sign: SignKind }
  | { readonly kind: 'mark'; readonly mark: 'dead' | 'buzzing' | 'cracked' };

export interface TonightNote {
  readonly note: MidiNote;
  readonly isNeeded: boolean;
  readonly isUnread: boolean;
  readonly action: NoteAction;
  /** All that is wrong with it, the weightiest first; empty for a note that is simply played. */
  readonly reasons: readonly NoteReason[];
  /** `helps`: gone sharp and nothing else, so a magnet may bring it down for tonight. `on`: one is on it. */
  readonly magnet: 'none' | 'helps' | 'on';
}

export interface NoteFindings {
  readonly result: NoteResult;
  readonly signs: readonly HeardSign[];
  /** When a magnet was put on it, or null. */
  readonly magnetAt: Instant | null;
  /** When the note was read. */
  readonly readAt: Instant;
  readonly isNeeded: boolean;
}

const weight: Readonly<Record<NoteAction, number>> = { avoid: 2, 'in-passing': 1, play: 0 };

interface Weighed {
  readonly reason: NoteReason;
  readonly action: NoteAction;
}

/** One note as the rules see it. */
export function tonightNote(findings: NoteFindings, rules: TonightRules): TonightNote {
  const { result, signs, magnetAt, readAt, isNeeded } = findings;
  const { note, reading, mark } = result;
  const off = result.againstPan ?? result.againstBand;
  const marked = mark === 'dead' || mark === 'buzzing' || mark === 'cracked' ? mark : null;
  const isOnLater = magnetAt !== null && magnetAt >= readAt;
  const weighed: Weighed[] = [];
  const add = (reason: NoteReason, action: NoteAction): void => {
    if (action !== 'play') weighed.push({ reason, action });
  };
  if (marked) {
    add({ kind: 'mark', mark: marked }, marked === 'cracked' ? 'avoid' : rules[marked]);
  }
  for (const sign of signsOf(signs, result)) add({ kind: 'sign', sign }, rules[sign]);
  const isOther = weighed.length > 0;
  if (off !== null) {
    const away = awayAction(Math.abs(off), rules);
    // It was sharp before the magnet was put on, and nobody has measured it since.
    const eased = isOnLater && off > 0 && away === 'avoid' ? 'in-passing' : away;
    add({ kind: 'off', cents: off }, eased);
  }
  const octave = octaveOff(result);
  if (octave !== null && Math.abs(Math.round(octave)) > rules['octave-in-passing']) {
    add({ kind: 'octave-off', cents: octave }, 'in-passing');
  }
  weighed.sort((one, other) => weight[other.action] - weight[one.action]);
  const helps = !isOther && off !== null && Math.round(off) >= rules['magnet-from'];
  return {
    note,
    isNeeded,
    isUnread: reading === null && marked === null,
    action: weighed[0]?.action ?? 'play',
    reasons: weighed.map(({ reason }) => reason),
    magnet: magnetAt === null ? (helps ? 'helps' : 'none') : 'on',
  };
}

/** The signs once each; a reading that walks is one, whoever noticed it. */
const signsOf = (signs: readonly HeardSign[], { reading }: NoteResult): readonly SignKind[] => [
  ...new Set([
    ...(reading?.walking ? (['walking'] as const) : []),
    ...signs.map(({ kind }) => kind),
  ]),
];

/** On whole cents, as everywhere. */
function awayAction(away: number, rules: TonightRules): NoteAction {
  const whole = Math.round(away);
  if (whole > rules['off-avoid']) return 'avoid';
  return whole > rules['off-in-passing'] ? 'in-passing' : 'play';
}

/** As long as it is not known which of two lines is the note's own octave, nothing is said about the octave. */
function octaveOff({ judged }: NoteResult): Cents | null {
  if (!judged?.octave || judged.octaveRival) return null;
  return judged.octave.centsFromOwn;
}
