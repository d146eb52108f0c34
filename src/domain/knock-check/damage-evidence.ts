// What was heard of one note and what it is compared with, and the signs of damage that may follow from it.
import type { Strike } from '../measurement/strike';
import type { ThirdWish } from '../pans/layout';
import { usualTolerances } from '../tuning/tolerances';
import type { Cents, Decibels, Hertz, MidiNote } from '../tuning/units';

export type DamageSign =
  /** The octave partial is not heard, though the neighbours (or the last record) have theirs. */
  | ({ readonly kind: 'no-octave' } & MissingPartial)
  | ({ readonly kind: 'no-third' } & MissingPartial)
  /** The note rings far too short. Both are ratios of time constants (1 = as long); null where nothing is known. */
  | {
      readonly kind: 'choked';
      readonly againstNeighbours: number | null;
      readonly againstBefore: number | null;
      /** Blows on it that were heard as mere knocks: above 0 the note may not ring at all. */
      readonly knocks: number;
    }
  /** Each strike is lower (below zero) or higher than the one before. */
  | { readonly kind: 'walking'; readonly centsPerStrike: Cents; readonly strikes: number }
  /** Noise comes and goes with the strike. */
  | {
      readonly kind: 'buzzing';
      /** Against the note itself, and over the middle of the comparison notes; null where nothing is known. */
      readonly buzzDb: Decibels | null;
      readonly overNeighboursDb: Decibels | null;
      /** Single blows that were heard as several: whatever rattles hits as loudly as the stick. */
      readonly heardAsSeveral: number;
    }
  /** Two lines at the octave where the last record had one, and the ring partner is neither. */
  | {
      readonly kind: 'new-doublet';
      /** From the lower line to the upper one, and their beats per second. */
      readonly apart: Cents;
      readonly beatHz: Hertz;
    };

export type DamageKind = DamageSign['kind'];

export interface MissingPartial {
  /** How many strikes there are, and in how many the partial is missing or too faint. */
  readonly missingIn: number;
  readonly strikes: number;
  /** Comparison notes that have it, and how many there are. */
  readonly neighboursWith: number;
  readonly neighbours: number;
  /** Whether the last record had it; null without a record. */
  readonly wasThere: boolean | null;
}

/** What was heard of one note, and what it is compared with. */
export interface DamageEvidence {
  readonly note: MidiNote;
  /** Settled strikes, oldest first (`strikesOf` of a kept reading, or `heard` of one under way). */
  readonly strikes: readonly Strike[];
  /** Blows on this note that the ear took for knocks. */
  readonly knocks: number;
  /** Blows on this note, one at a time, that the ear refused as too fast: it heard several in each. */
  readonly heardAsSeveral: number;
  /** Strikes of the comparison notes (`comparisonNotes`), one list for each note; empty lists are skipped. */
  readonly neighbours: readonly (readonly Strike[])[];
  /** Strikes of the last record of this note before the knock; null without one. */
  readonly before: readonly Strike[] | null;
  /** Fundamental of the pan's note an octave up as heard in this round; null if unknown or not on the pan. */
  readonly partnerHz: Hertz | null;
  /** The third partial that the layout asks for. */
  readonly third: ThirdWish | null;
  /** Above this note partials are not asked for. */
  readonly highestWithPartials: MidiNote;
}

/** The evidence of a note about which nothing is known yet, with what is given filled in. */
export const evidenceOf = (
  note: MidiNote,
  strikes: readonly Strike[],
  known: Partial<DamageEvidence> = {},
): DamageEvidence => ({
  knocks: 0,
  heardAsSeveral: 0,
  neighbours: [],
  before: null,
  partnerHz: null,
  third: null,
  highestWithPartials: usualTolerances.highestWithPartials,
  ...known,
  note,
  strikes,
});
