// Strikes of one note brought together: three that agree settle a reading.
import type { Strike, ThirdKind } from '../measurement/strike';
import { type Cents, cents, type MidiNote } from '../tuning/units';

export interface ReadingPartial {
  readonly cents: Cents;
  readonly centsFromOwn: Cents;
}

export interface Reading {
  readonly note: MidiNote;
  /** The agreeing strikes, oldest first. */
  readonly strikes: readonly Strike[];
  readonly settled: boolean;
  readonly fundamental: { readonly cents: Cents };
  readonly octave: ReadingPartial | null;
  readonly third: (ReadingPartial & { readonly kind: ThirdKind }) | null;
  readonly glideCents: Cents;
  /** Largest distance between two fundamentals of the agreeing strikes. */
  readonly spread: Cents;
}

export type ReadingStep =
  | { readonly kind: 'taken'; readonly reading: Reading }
  /** The strike disagrees with those before it; the reading starts again with it. */
  | { readonly kind: 'again'; readonly reading: Reading };

export const strikesToSettle = 3;
/** Strikes agree when their fundamentals and octaves lie this close, cents. */
const agreement = { fundamental: 2.5, octave: 4 };
const mostStrikes = 7;
/** Spread from strike to strike that no standard error shows, cents. */
const strikeScatter = 0.3;

/** Adds a strike (settled or provisional) to the reading so far; another note starts a new reading. */
export function addStrike(reading: Reading | null, strike: Strike): ReadingStep {
  if (!reading || reading.note !== strike.note) {
    return { kind: 'taken', reading: combine([strike]) };
  }
  const earlier = reading.strikes.filter((each) => each.event !== strike.event);
  if (earlier.length === 0) return { kind: 'taken', reading: combine([strike]) };
  if (!agrees(combine(earlier), strike)) return { kind: 'again', reading: combine([strike]) };
  return { kind: 'taken', reading: combine([...earlier, strike].slice(-mostStrikes)) };
}

function agrees(reading: Reading, strike: Strike): boolean {
  const { fundamental, octave } = strike;
  const limit = Math.max(agreement.fundamental, 3 * fundamental.sigmaCents);
  if (Math.abs(fundamental.cents - reading.fundamental.cents) > limit) return false;
  if (!octave || !reading.octave) return true;
  const octaveLimit = Math.max(agreement.octave, 3 * octave.sigmaCents);
  return Math.abs(octave.cents - reading.octave.cents) <= octaveLimit;
}

function combine(strikes: readonly Strike[]): Reading {
  const [first] = strikes;
  if (!first) throw new Error('a reading needs a strike');
  const fundamentals = strikes.map((strike) => strike.fundamental);
  const octaves = strikes.flatMap((strike) => (strike.octave ? [strike.octave] : []));
  const thirdKind = commonKind(strikes);
  const thirds = strikes.flatMap((strike) =>
    strike.third && strike.third.kind === thirdKind ? [strike.third] : [],
  );
  const measured = fundamentals.map((each) => each.cents);
  return {
    note: first.note,
    strikes,
    settled: strikes.filter((strike) => !strike.provisional).length >= strikesToSettle,
    fundamental: { cents: weightedMean(fundamentals, (each) => each.cents) },
    octave: octaves.length > 0 ? partialOf(octaves) : null,
    third: thirdKind && thirds.length > 0 ? { kind: thirdKind, ...partialOf(thirds) } : null,
    glideCents: cents(strikes.reduce((sum, each) => sum + each.glideCents, 0) / strikes.length),
    spread: cents(Math.max(...measured) - Math.min(...measured)),
  };
}

interface Weighted {
  readonly cents: Cents;
  readonly centsFromOwn: Cents;
  readonly sigmaCents: Cents;
}

const partialOf = (each: readonly Weighted[]): ReadingPartial => ({
  cents: weightedMean(each, (partial) => partial.cents),
  centsFromOwn: weightedMean(each, (partial) => partial.centsFromOwn),
});

function commonKind(strikes: readonly Strike[]): ThirdKind | null {
  let balance = 0;
  for (const { third } of strikes) {
    if (third) balance += third.kind === 'twelfth' ? 1 : -1;
  }
  if (balance !== 0) return balance > 0 ? 'twelfth' : 'double-octave';
  return strikes.findLast((strike) => strike.third)?.third?.kind ?? null;
}

/** Mean with weights from the standard errors: 1 / (σ² + scatter²). */
function weightedMean<T extends { readonly sigmaCents: Cents }>(
  values: readonly T[],
  of: (value: T) => number,
): Cents {
  let sum = 0;
  let weights = 0;
  for (const value of values) {
    const weight = 1 / (value.sigmaCents ** 2 + strikeScatter ** 2);
    sum += weight * of(value);
    weights += weight;
  }
  return cents(sum / weights);
}
