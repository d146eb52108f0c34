// Whether a pan can be played tonight: one verdict, the reasons for it, and what each note is good for.
import type { PanLayout } from '../pans/layout';
import type { LookAnswer, LookKind } from '../records/look-kinds';
import type { KnockCheck } from '../records/rack-records';
import { isBefore } from '../records/record-order';
import type { RoundResult } from '../rounds/round-result';
import { type Cents, type Instant, instant, type MidiNote } from '../tuning/units';
import { type PitchClass, pitchClassOf } from './saved-tunes';
import { neededNotes } from './set-needs';
import { type HeardSign, type TonightNote, tonightNote } from './tonight-notes';
import type { LookAction, TonightRules } from './tonight-rules';

export type TonightVerdict =
  | { readonly kind: 'do-not-play' }
  /** Nothing can be said yet; `until` is when a hot pan may be looked at again, null where no time tells. */
  | { readonly kind: 'wait'; readonly until: Instant | null }
  /** Nothing was heard of this pan, or too little, or nothing since it was knocked. */
  | { readonly kind: 'strike-first' }
  | { readonly kind: 'swap' }
  | { readonly kind: 'play-without'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'play' };

/** Why the verdict is what it is. */
export type TonightReason =
  | { readonly kind: 'look'; readonly look: LookKind }
  /** Nobody could tell whether it is so; and if it is, the pan must not be played. */
  | { readonly kind: 'look-unsure'; readonly look: LookKind }
  | { readonly kind: 'cracked-note'; readonly note: MidiNote }
  /** The round was taken on a pan that was just unloaded, or in the sun. */
  | { readonly kind: 'unsettled' }
  | { readonly kind: 'not-struck'; readonly since: 'ever' | 'knock' | 'some' }
  | { readonly kind: 'pan-off'; readonly cents: Cents }
  | { readonly kind: 'many-left-out'; readonly count: number; readonly of: number }
  | { readonly kind: 'note-lost'; readonly notes: readonly PitchClass[] };

export interface TonightFindings {
  readonly layout: PanLayout;
  /** The newest knock check of the pan. */
  readonly check: KnockCheck | null;
  /** The pan as it stands now, dated by its newest finished round. */
  readonly result: RoundResult | null;
  /** Notes that are marked as cracked now, struck or not. */
  readonly cracked: readonly MidiNote[];
  readonly signs: ReadonlyMap<MidiNote, readonly HeardSign[]>;
  /** When a magnet was put on a note; magnets that were taken off are not listed. */
  readonly magnets: ReadonlyMap<MidiNote, Instant>;
  /** What the set needs; null: every note. */
  readonly needed: ReadonlySet<PitchClass> | null;
}

export interface TonightResult {
  readonly verdict: TonightVerdict;
  readonly reasons: readonly TonightReason[];
  /** What was seen and must be put right before a note is played. */
  readonly first: readonly LookKind[];
  /** What was seen and is only to be kept in mind. */
  readonly tell: readonly LookKind[];
  /** What was looked at and nobody could tell. */
  readonly unsure: readonly LookKind[];
  /** Every note of the pan, lowest first; empty while nothing was heard. */
  readonly notes: readonly TonightNote[];
  /** The pan as a whole against the band; null while unknown. */
  readonly againstBand: { readonly cents: Cents; readonly isHeard: boolean } | null;
}

const minute = 60_000;

/** The result by these rules. No clock: that a wait is over is said by a new look. */
export function judgeTonight(findings: TonightFindings, rules: TonightRules): TonightResult {
  const { layout, check, cracked, signs, magnets, needed } = findings;
  const result = heardSinceKnock(findings);
  const needs = new Set(neededNotes(layout, needed));
  const notes = (result?.notes ?? []).map((each) =>
    tonightNote(
      {
        result: each,
        signs: signs.get(each.note) ?? [],
        magnetAt: magnets.get(each.note) ?? null,
        readAt: each.readAt ?? instant(0),
        isNeeded: needs.has(each.note),
      },
      rules,
    ),
  );
  const looked = (wanted: LookAnswer): readonly LookKind[] =>
    (check?.looks ?? []).filter(({ answer }) => answer === wanted).map(({ look }) => look);
  const unsure = looked('unsure');
  const seen = (action: LookAction): readonly LookKind[] =>
    looked('yes').filter((look) => rules[look] === action);
  const pitch = result?.panPitch?.cents ?? null;
  const rest = {
    // To make safe what may be sharp or loose costs little, so a doubt is enough.
    first: [...seen('first'), ...unsure.filter((look) => rules[look] === 'first')],
    tell: seen('tell'),
    unsure,
    notes,
    againstBand:
      pitch === null
        ? null
        : { cents: pitch, isHeard: Math.round(Math.abs(pitch)) >= rules['pan-heard'] },
  };
  const decided = (verdict: TonightVerdict, reasons: readonly TonightReason[]): TonightResult => ({
    verdict,
    reasons,
    ...rest,
  });

  const never: TonightReason[] = [
    ...seen('do-not-play').map((look) => ({ kind: 'look' as const, look })),
    ...cracked.map((note) => ({ kind: 'cracked-note' as const, note })),
  ];
  if (never.length > 0) return decided({ kind: 'do-not-play' }, never);

  const waiting = waitingFor(findings, seen('wait'), result, rules);
  if (waiting) return decided({ kind: 'wait', until: waiting.until }, waiting.reasons);

  const mine = notes.filter(({ isNeeded }) => isNeeded);
  const unread = mine.filter(({ isUnread }) => isUnread).length;
  const isTooMany = (count: number): boolean => 100 * count > rules['most-left-out'] * mine.length;
  if (!result || isTooMany(unread)) {
    const since = result ? 'some' : findings.result ? 'knock' : 'ever';
    return decided({ kind: 'strike-first' }, [{ kind: 'not-struck', since }]);
  }

  const avoided = mine.filter(({ action }) => action === 'avoid').map(({ note }) => note);
  const swap: TonightReason[] = unsure
    .filter((look) => rules[look] === 'do-not-play')
    .map((look) => ({ kind: 'look-unsure', look }));
  if (pitch !== null && Math.round(Math.abs(pitch)) > rules['pan-swap']) {
    swap.push({ kind: 'pan-off', cents: pitch });
  }
  if (isTooMany(avoided.length)) {
    swap.push({ kind: 'many-left-out', count: avoided.length, of: mine.length });
  }
  const lost = lostClasses(mine);
  if (lost.length > 0 && rules['note-lost'] === 'swap') {
    swap.push({ kind: 'note-lost', notes: lost });
  }
  if (swap.length > 0) return decided({ kind: 'swap' }, swap);
  if (avoided.length > 0) return decided({ kind: 'play-without', notes: avoided }, []);
  return decided({ kind: 'play' }, []);
}

/** The newest round, unless the pan was knocked after it and not struck since. */
function heardSinceKnock({ check, result }: TonightFindings): RoundResult | null {
  if (!check || !result) return result;
  return result.round === check.round || !isBefore(result, check) ? result : null;
}

/** What a pan waits for before it is judged, or null. */
function waitingFor(
  { check }: TonightFindings,
  looks: readonly LookKind[],
  result: RoundResult | null,
  rules: TonightRules,
): { readonly until: Instant | null; readonly reasons: readonly TonightReason[] } | null {
  const until = check ? instant(check.at + rules['heat-minutes'] * minute) : null;
  // A round that was begun after the wait was struck on a cool pan.
  const hasCooled = result !== null && until !== null && result.at >= until;
  const open = looks.filter((look) => look !== 'heat' || !hasCooled);
  const reasons: TonightReason[] = open.map((look) => ({ kind: 'look', look }));
  if (result?.isProvisional && rules.heat === 'wait' && !open.includes('heat')) {
    reasons.push({ kind: 'unsettled' });
  }
  if (reasons.length === 0) return null;
  return { until: open.includes('heat') ? until : null, reasons };
}

/** The pitch classes that the set needs and that no octave is left of. */
function lostClasses(needed: readonly TonightNote[]): readonly PitchClass[] {
  const left = new Set(
    needed.filter(({ action }) => action !== 'avoid').map(({ note }) => pitchClassOf(note)),
  );
  return [...new Set(needed.map(({ note }) => pitchClassOf(note)))].filter(
    (each) => !left.has(each),
  );
}
