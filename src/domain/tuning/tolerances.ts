// How far off a note may be: the user's choice; no published standard exists.
import { type Cents, cents, type MidiNote, midiNote } from './units';

/** Limits in cents, both included. */
export interface Limits {
  /** Fundamental against its target, and octave against twice the own fundamental. */
  readonly main: Cents;
  /** Third partial against three or four times the own fundamental. */
  readonly third: Cents;
}

export interface Tolerances extends Limits {
  /** Notes above this one are judged by their fundamental only. */
  readonly highestWithPartials: MidiNote;
}

/** From the narrowest to the widest; beyond `out` a note is not to be featured. */
export const toleranceSteps = ['good', 'playable', 'out'] as const;
export type ToleranceStep = (typeof toleranceSteps)[number];

/** What the user calls good, playable and out. */
export interface ToleranceSet extends Readonly<Record<ToleranceStep, Limits>> {
  readonly highestWithPartials: MidiNote;
}

/** The default set (common practice, no source); C6 is the highest note judged by its partials. */
export const usualTolerances: ToleranceSet = {
  good: { main: cents(5), third: cents(10) },
  playable: { main: cents(12), third: cents(25) },
  out: { main: cents(30), third: cents(50) },
  highestWithPartials: midiNote(84),
};

/**
 * For fine work: good means within 2 cents, and twice that for the third partial as in the default set (chosen, no
 * source).
 */
export const fineTolerances: ToleranceSet = {
  ...usualTolerances,
  good: { main: cents(2), third: cents(4) },
};

/** One step of a set, for a verdict. */
export const tolerancesAt = (set: ToleranceSet, step: ToleranceStep): Tolerances => ({
  ...set[step],
  highestWithPartials: set.highestWithPartials,
});

/** The default set "good". */
export const goodTolerances: Tolerances = tolerancesAt(usualTolerances, 'good');
