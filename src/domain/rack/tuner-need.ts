// How much a pan needs the tuner, and why, in order of weight.

import type { NoteResult } from '../rounds/judged-pan';
import { type Cents, cents, type Instant, type MidiNote } from '../tuning/units';

export type NeedReason =
  | { readonly kind: 'cracked'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'dead'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'avoid'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'out'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'buzzing'; readonly notes: readonly MidiNote[] }
  /** The whole pan lies this far from the band's pitch, by so many of its notes. */
  | { readonly kind: 'pan-pitch'; readonly cents: Cents; readonly from: number }
  /** Notes moved this much since the round before (mean of absolute values), those read in both. */
  | { readonly kind: 'drift'; readonly cents: Cents; readonly from: number }
  | { readonly kind: 'old-round'; readonly lastRoundAt: Instant }
  | { readonly kind: 'never-read' };

export interface TunerNeed {
  /** Larger is more; 0: nothing known, or nothing wrong. */
  readonly need: number;
  /** Heaviest first. */
  readonly reasons: readonly NeedReason[];
}

/**
 * The weights, all in one unit: a note that is clearly out is 4. They stand for how much of a tuner's day each
 * fault takes; common practice, no source. A crack comes first because it spreads and because that pan must not be
 * played; a whole pan that has moved is much work, but can be played by itself.
 */
const needWeights = {
  /** For each note. */
  cracked: 40,
  dead: 20,
  avoid: 10,
  out: 4,
  buzzing: 3,
  /** For each cent beyond `free`, up to `most`. */
  panPitch: { each: 1, free: 5, most: 20 },
  drift: { each: 1, free: 1, most: 10 },
  /** For each 30 days beyond `free` days. */
  oldRound: { each: 1, free: 180, most: 6 },
  neverRead: 6,
} as const;

export interface NeedFindings {
  /** The notes after the newest finished round, or with their marks only; empty: nothing known. */
  readonly notes: readonly Pick<NoteResult, 'note' | 'standing' | 'reason'>[];
  readonly panPitch: FromNotes | null;
  /** `meanChange` since the round before. */
  readonly drift: FromNotes | null;
}

/** A value, and how many notes it comes from. */
export interface FromNotes {
  readonly cents: Cents;
  readonly from: number;
}

interface Weighed {
  readonly weight: number;
  readonly reason: NeedReason;
}

const none: FromNotes = { cents: cents(0), from: 0 };

const noteKinds = ['cracked', 'dead', 'avoid', 'out', 'buzzing'] as const;
type NoteKind = (typeof noteKinds)[number];

/** Notes that moved less on average say nothing about a pan, cents (chosen, no source: one can hear two or three). */
const leastDrift = 3;

/** The need that follows from the readings and marks; what time adds comes with `needNow`. */
export function tunerNeed({ notes, panPitch, drift }: NeedFindings): TunerNeed {
  const weighed: Weighed[] = noteKinds.map((kind) => {
    const these = notes.filter((note) => kindOf(note) === kind).map(({ note }) => note);
    return { weight: needWeights[kind] * these.length, reason: { kind, notes: these } };
  });
  const pitch = panPitch ?? none;
  const moved = drift !== null && drift.cents >= leastDrift ? drift : none;
  weighed.push(
    {
      weight: beyond(needWeights.panPitch, Math.abs(pitch.cents)),
      reason: { kind: 'pan-pitch', ...pitch },
    },
    { weight: beyond(needWeights.drift, moved.cents), reason: { kind: 'drift', ...moved } },
  );
  return needOf(weighed);
}

const day = 24 * 3600 * 1000;

/** The need of a pan today: that of its card, and what is added by an old round or by none. */
export function needNow(
  card: TunerNeed & { readonly lastRoundAt: Instant | null },
  now: Instant,
): TunerNeed {
  const { lastRoundAt } = card;
  const added: Weighed =
    lastRoundAt === null
      ? { weight: needWeights.neverRead, reason: { kind: 'never-read' } }
      : {
          weight: beyond(needWeights.oldRound, (now - lastRoundAt) / day, 30),
          reason: { kind: 'old-round', lastRoundAt },
        };
  const { need, reasons } = needOf([added]);
  // The lightest weights there are: their reasons come last.
  return { need: card.need + need, reasons: [...card.reasons, ...reasons] };
}

/** Each note counts as one kind only, so that nothing counts twice. */
function kindOf({ standing, reason }: NeedFindings['notes'][number]): NoteKind | null {
  if (reason.kind === 'mark') return reason.mark;
  return standing === 'avoid' || standing === 'out' ? standing : null;
}

const beyond = (
  { each, free, most }: { readonly each: number; readonly free: number; readonly most: number },
  value: number,
  unit = 1,
): number => Math.min(most, Math.max(0, (each * (value - free)) / unit));

function needOf(weighed: readonly Weighed[]): TunerNeed {
  const heaviest = weighed
    .filter(({ weight }) => weight > 0)
    .sort((one, other) => other.weight - one.weight);
  return {
    need: heaviest.reduce((sum, { weight }) => sum + weight, 0),
    reasons: heaviest.map(({ reason }) => reason),
  };
}
