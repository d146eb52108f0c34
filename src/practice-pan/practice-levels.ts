// How a practice pan is out of tune at the beginning.
// All figures are invented.

import type { PracticeLevel } from '../domain/ports/practice-port';
import type { ThirdKind } from '../domain/tuning/third-kind';
import { type Cents, cents, type MidiNote } from '../domain/tuning/units';
import { between } from './seeded-random';

export interface PracticeTruth {
  /** Against equal temperament at the pan's A4. */
  readonly fundamentalCents: Cents;
  /** Against twice the own fundamental. */
  readonly octaveCents: Cents;
  readonly third: { readonly kind: ThirdKind; readonly cents: Cents };
}

interface Detuning {
  /** How many of a lead's 29 notes are out. */
  readonly out: number;
  /** How far out their fundamentals are, cents, and how often below instead of above. */
  readonly far: readonly [least: number, most: number];
  readonly flatShare: number;
  /** How far off the others are at most. */
  readonly near: number;
}

const detunings: Readonly<Record<PracticeLevel, Detuning>> = {
  'one-flat': { out: 1, far: [8, 22], flatShare: 1, near: 3 },
  'some-out': { out: 5, far: [8, 22], flatShare: 0.6, near: 4 },
  dropped: { out: 10, far: [12, 45], flatShare: 0.6, near: 4 },
};
const octaveOut = 10;

/** The notes of a level that are out of tune. */
export function notesOut(
  level: PracticeLevel,
  notes: readonly MidiNote[],
  random: () => number,
): ReadonlySet<MidiNote> {
  const count = Math.min(detunings[level].out, notes.length);
  const out = new Set<MidiNote>();
  while (out.size < count) out.add(pick(random, notes));
  return out;
}

export function drawFundamental(level: PracticeLevel, isOut: boolean, random: () => number): Cents {
  const { far, flatShare, near } = detunings[level];
  const side = random() < flatShare ? -1 : 1;
  return cents(isOut ? side * between(random, ...far) : between(random, -near, near));
}

export function drawOctave(level: PracticeLevel, isOut: boolean, random: () => number): Cents {
  const reach = isOut ? octaveOut : detunings[level].near;
  return cents(between(random, -reach, reach));
}

export const pick = <T>(random: () => number, from: readonly T[]): T => {
  const chosen = from[Math.floor(random() * from.length)];
  if (chosen === undefined) throw new Error('nothing to pick from');
  return chosen;
};
