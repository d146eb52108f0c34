// One strike taken apart: its partials one by one, each with its course and its sound.
import type { Cents, Decibels, Hertz, Seconds } from '../tuning/units';
import type { CutSound } from './cut-sound';
import type { MeasuredPartial, Strike } from './strike';

export type PartName = 'fundamental' | 'octave' | 'third';

/** One moment of a partial's course. */
export interface PartMoment {
  /** Since the strike. */
  readonly at: Seconds;
  /** Against the part's target. */
  readonly cents: Cents;
  /** Against the loudest moment of all parts. */
  readonly levelDb: Decibels;
}

export interface PartInside {
  readonly name: PartName;
  /** As the strike's reading has it. */
  readonly measured: MeasuredPartial;
  /**
   * The value on the readout: for the fundamental against its note, for the others against the note's own fundamental.
   */
  readonly cents: Cents;
  readonly targetHz: Hertz;
  /** Between the partial and its target, per second. */
  readonly beatHz: Hertz;
  /** The other of two lines, and its value; `course` shows both as one sound. */
  readonly rival: { readonly measured: MeasuredPartial; readonly cents: Cents } | null;
  readonly course: readonly PartMoment[];
}

/** What of a part is played; `slower`: this many times as long, at the same pitch. */
export type PartSound = 'alone' | 'target' | 'both';
export type Slower = 1 | 2 | 4;

export interface StrikeInside {
  readonly parts: readonly PartInside[];
  /** How long the part that can be played is, s. */
  readonly seconds: Seconds;
  soundOf(part: PartName, which: PartSound, slower: Slower): CutSound;
}

/** `onset`: of the strike in `sound`, s. Never throws; parts that were not heard are missing. */
export type TakeApart = (strike: Strike, sound: CutSound, onset: Seconds) => StrikeInside;
