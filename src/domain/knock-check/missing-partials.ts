// Signs that a note has lost its octave or its third partial.
import type { MeasuredPartial, Strike } from '../measurement/strike';
import { median } from '../numbers/averages';
import { centsBetween } from '../tuning/units';
import type { DamageEvidence, DamageSign, MissingPartial } from './damage-evidence';
import { damageLimits } from './damage-limits';

type Has = (strike: Strike) => boolean;

interface Question {
  /** What the note's strikes are tested for now. */
  readonly has: Has;
  /** What the last record and the neighbours are tested for. */
  readonly had: Has;
  /** The share of the strikes that must lack it, and of the neighbours that must have it. */
  readonly leastMissing: number;
  readonly leastWith: number;
}

/**
 * The signs `no-octave` and `no-third`. Where the fundamental was inferred no partial can be missing: it follows from
 * them.
 */
export function missingPartialSigns(evidence: DamageEvidence): readonly DamageSign[] {
  const strikes = evidence.strikes.filter((strike) => !strike.isInferred);
  if (strikes.length === 0 || evidence.note > evidence.highestWithPartials) return [];
  const heard = { ...evidence, strikes };
  const { leastShare, leastShareOfNeighbours, leastShareWithThird } = damageLimits;
  const octave = missing(heard, {
    has: hasOctave(leastOctaveDb(evidence)),
    had: hasOctave(),
    leastMissing: leastShare,
    leastWith: leastShareOfNeighbours,
  });
  // A faint third is heard in one strike and not in the next: unless it is known to be clear, one is enough.
  const third = asksForThird(evidence)
    ? missing(heard, {
        has: hasThird,
        had: hasThird,
        leastMissing: evidence.before ? leastShare : 1,
        leastWith: leastShareWithThird,
      })
    : null;
  return [
    ...(octave ? [{ kind: 'no-octave', ...octave } as const] : []),
    ...(third ? [{ kind: 'no-third', ...third } as const] : []),
  ];
}

/** Level against the fundamental, dB; minus infinity where the partial was not heard. */
const relativeDb = (strike: Strike, partial: MeasuredPartial | null): number =>
  partial ? partial.levelDb - strike.fundamental.levelDb : Number.NEGATIVE_INFINITY;

const hasOctave =
  (leastDb: number = damageLimits.faintestOctaveDb): Has =>
  (strike) =>
    relativeDb(strike, strike.octave) >= leastDb;

/** The third partial, or a line in its place that was seen but too faint to measure. */
const hasThird: Has = ({ third, fundamental, alsoRinging }) =>
  third !== null ||
  alsoRinging.some((line) =>
    [3, 4].some(
      (order) => Math.abs(centsBetween(order * fundamental.hz, line.hz)) <= damageLimits.thirdReach,
    ),
  );

const hasClearThird: Has = (strike) =>
  relativeDb(strike, strike.third) >= damageLimits.clearThirdDb;

/** An octave that has fallen far below what the last record had counts as lost, too. */
function leastOctaveDb({ before }: DamageEvidence): number {
  const usual = median((before ?? []).map((strike) => relativeDb(strike, strike.octave)));
  return Math.max(damageLimits.faintestOctaveDb, (usual ?? -99) + damageLimits.octaveFallDb);
}

/** A note need not have a third that it was never meant to have: the last record or the layout must call for it. */
const asksForThird = ({ third, before }: DamageEvidence): boolean =>
  third !== 'none' && (before !== null ? mostHave(before, hasClearThird) : third !== null);

const mostHave = (strikes: readonly Strike[], has: Has): boolean =>
  strikes.filter(has).length >= damageLimits.leastShare * strikes.length;

function missing(
  { strikes, neighbours, before }: DamageEvidence,
  { has, had, leastMissing, leastWith }: Question,
): MissingPartial | null {
  const missingIn = strikes.filter((strike) => !has(strike)).length;
  if (missingIn < leastMissing * strikes.length) return null;
  const neighboursWith = neighbours.filter((each) => mostHave(each, had)).length;
  const wasThere = before && mostHave(before, had);
  const isUsual =
    neighbours.length >= damageLimits.fewestNeighbours &&
    neighboursWith >= leastWith * neighbours.length;
  // The note's own last record knows better than its neighbours.
  if (!(wasThere ?? isUsual)) return null;
  return {
    missingIn,
    strikes: strikes.length,
    neighboursWith,
    neighbours: neighbours.length,
    wasThere,
  };
}
