// How one note stands after a reading, in one word, and why: the words of the map, the rack and the sheet.
import type { MarkKind } from '../records/rack-records';
import {
  type ToleranceSet,
  toleranceSteps,
  tolerancesAt,
  usualTolerances,
} from '../tuning/tolerances';
import type { Cents } from '../tuning/units';
import { allowedFor, type Judged, type Verdict, verdictOn } from '../tuning/verdict';

export type NoteStanding =
  /** Everything within the "good" tolerance. */
  | 'good'
  /** Not good, but can be played. */
  | 'playable'
  /** Clearly out of tune. */
  | 'out'
  /** So far out, unstable or marked that the note is not to be featured. */
  | 'avoid'
  /** No reading yet. */
  | 'unread';

/** A verdict that names a partial and how far off it is. */
export type Fault = Exclude<
  Verdict,
  { readonly kind: 'aligned' | 'in-tune' | 'octave-open' | 'inferred' }
>;

export type StandingReason =
  | { readonly kind: 'unread' }
  | { readonly kind: 'aligned' }
  /** Nothing else is wrong, but nobody knows yet which of two lines is the note's own octave. */
  | { readonly kind: 'octave-open' }
  /** The fundamental is only inferred, and nothing is off by more than its error. */
  | { readonly kind: 'inferred' }
  /** The partial that keeps the note from standing better. */
  | { readonly kind: 'off'; readonly fault: Fault }
  /** Each strike is lower, or higher, than the one before. */
  | { readonly kind: 'walking'; readonly centsPerStrike: Cents }
  | { readonly kind: 'mark'; readonly mark: 'dead' | 'buzzing' | 'cracked' };

export interface JudgedStanding {
  readonly standing: NoteStanding;
  readonly reason: StandingReason;
}

export interface NoteState {
  /** Null without a reading. */
  readonly judged: Judged | null;
  readonly walking?: { readonly centsPerStrike: Cents } | null;
  /** The newest mark that holds. */
  readonly mark?: MarkKind;
}

/** Worst first; a note without a reading comes after all that are known to be wrong. */
const order: readonly NoteStanding[] = ['avoid', 'out', 'playable', 'unread', 'good'];

/** Larger is worse. */
export const standingRank = (standing: NoteStanding): number =>
  order.length - order.indexOf(standing);

/** A mark stands for at least this (common practice, no source); a skipped note is simply not read. */
const standingOfMark = { cracked: 'avoid', dead: 'avoid', buzzing: 'out' } as const;

/**
 * How a note stands: marks and walking first, then the widest step of `limits` that holds all its partials.
 * The reason is the fault that the next better step would not allow.
 */
export function standingOf(
  state: NoteState,
  limits: ToleranceSet = usualTolerances,
): JudgedStanding {
  const { judged, walking = null, mark = 'none' } = state;
  const measured = standingOfValues(judged, limits);
  if (mark === 'cracked' || mark === 'dead') {
    return { standing: standingOfMark[mark], reason: { kind: 'mark', mark } };
  }
  if (judged && walking) {
    const { centsPerStrike } = walking;
    return { standing: 'avoid', reason: { kind: 'walking', centsPerStrike } };
  }
  const isBuzzing = mark === 'buzzing';
  if (isBuzzing && standingRank(measured.standing) < standingRank(standingOfMark.buzzing)) {
    return { standing: standingOfMark.buzzing, reason: { kind: 'mark', mark } };
  }
  return measured;
}

function standingOfValues(judged: Judged | null, limits: ToleranceSet): JudgedStanding {
  if (!judged) return { standing: 'unread', reason: { kind: 'unread' } };
  const isOpen = Boolean(judged.octaveRival) && judged.note <= limits.highestWithPartials;
  // With two lines at the octave, only what is certain without them is said.
  const sure = isOpen ? { ...judged, octave: null, octaveRival: null } : judged;
  let reason: StandingReason = {
    kind: isOpen ? 'octave-open' : judged.isInferred ? 'inferred' : 'aligned',
  };
  for (const step of toleranceSteps) {
    const verdict = verdictOn(sure, tolerancesAt(limits, step));
    switch (verdict.kind) {
      case 'aligned':
      case 'in-tune':
      case 'octave-open':
      case 'inferred':
        return { standing: step, reason };
      default:
        reason = { kind: 'off', fault: verdict };
    }
  }
  return { standing: 'avoid', reason };
}

/** Worst partial as a multiple of its "good" limit: 1 is just good. For sorting by severity. */
export function shareOfGood(judged: Judged, limits: ToleranceSet = usualTolerances): number {
  const { good, highestWithPartials } = limits;
  const allowed = (value: Parameters<typeof allowedFor>[1] | null, limit: Cents): Cents =>
    allowedFor(judged, value ?? {}, limit);
  const fundamental = Math.abs(judged.fundamental.cents) / allowed(judged.fundamental, good.main);
  if (judged.note > highestWithPartials) return fundamental;
  const octave = judged.octaveRival
    ? 0
    : Math.abs(judged.octave?.centsFromOwn ?? 0) / allowed(judged.octave, good.main);
  const third = Math.abs(judged.third?.centsFromOwn ?? 0) / allowed(judged.third, good.third);
  return Math.max(fundamental, octave, third);
}

/** How many notes stand how. */
export function countStandings(
  standings: Iterable<NoteStanding>,
): Readonly<Record<NoteStanding, number>> {
  const counts = { good: 0, playable: 0, out: 0, avoid: 0, unread: 0 };
  for (const standing of standings) counts[standing]++;
  return counts;
}
