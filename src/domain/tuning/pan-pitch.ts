// The reference that fits a pan as a whole: most notes decide it, a few that have dropped do not.
import { median, sumOf } from '../numbers/averages';
import { type Cents, cents, type Hertz, type MidiNote, shiftedBy } from './units';

export interface PitchedNote {
  readonly note: MidiNote;
  /** Fundamental against its target at the band's pitch. */
  readonly cents: Cents;
  readonly sigmaCents: Cents;
}

export interface PanPitch {
  /** Against the band's pitch. */
  readonly cents: Cents;
  /** One standard error of `cents`, from how the notes scatter. */
  readonly sigmaCents: Cents;
  /** The A4 that fits the pan. */
  readonly a4: Hertz;
  /** How far a usual note lies from the pan pitch: 1.4826 times the median distance, a robust standard deviation. */
  readonly spread: Cents;
  /** Each note against the pan pitch, in the order given. */
  readonly notes: readonly NoteAgainstPan[];
}

export interface NoteAgainstPan {
  readonly note: MidiNote;
  readonly cents: Cents;
  /** Too far from the others to count in the pan pitch. */
  readonly isApart: boolean;
}

/** Fewest notes that tell anything about a pan (chosen, no source). */
const fewestNotes = 3;
/** A normal distribution's standard deviation over its median absolute deviation. */
const normalFromMedian = 1.4826;
/** Notes are never taken to scatter less than this, cents (chosen, no source). */
const leastSpread = 1;
/** Beyond this many spreads a note does not count: 95 % efficiency on normally scattered notes. */
const reach = 4.685;
const rounds = 50;

/**
 * Pan pitch from the fundamentals: Tukey's biweight about the median, the spread from the median distance
 * (Mosteller & Tukey, *Data Analysis and Regression*, 1977; constants from memory). Null for fewer than
 * three notes.
 */
export function panPitchOf(notes: readonly PitchedNote[], bandA4: Hertz): PanPitch | null {
  if (notes.length < fewestNotes) return null;
  const start = median(notes.map((note) => note.cents)) ?? 0;
  const spreadAbout = (centre: number): number =>
    normalFromMedian * (median(notes.map((note) => Math.abs(note.cents - centre))) ?? 0);
  const scale = Math.max(leastSpread, spreadAbout(start));
  const pulls = (centre: number) =>
    notes.map((note) => {
      const away = note.cents - centre;
      const own = Math.hypot(scale, note.sigmaCents);
      const share = (away / (reach * own)) ** 2;
      const trust = 1 / own ** 2;
      return share >= 1
        ? { away, weight: 0, slope: 0 }
        : {
            away,
            weight: trust * (1 - share) ** 2,
            slope: trust * (1 - share) * (1 - 5 * share),
          };
    });
  let centre = start;
  for (let n = 0; n < rounds; n++) {
    const each = pulls(centre);
    const weights = sumOf(each, ({ weight }) => weight);
    const step = sumOf(each, ({ weight, away }) => weight * away) / weights;
    centre += step;
    if (Math.abs(step) < 1e-9) break;
  }
  const settled = pulls(centre);
  // Variance of an M-estimator (Huber, *Robust Statistics*, 1981, ch. 6), never less than the notes' own errors allow.
  const push = Math.sqrt(sumOf(settled, ({ weight, away }) => (weight * away) ** 2));
  const hold = sumOf(settled, ({ slope }) => slope);
  const own = 1 / Math.sqrt(sumOf(notes, (note) => 1 / (note.sigmaCents ** 2 + leastSpread ** 2)));
  return {
    cents: cents(centre),
    sigmaCents: cents(Math.max(own, hold > 0 ? push / hold : scale)),
    a4: shiftedBy(bandA4, centre),
    spread: cents(spreadAbout(centre)),
    notes: notes.map(({ note, cents: value }, k) => ({
      note,
      cents: cents(value - centre),
      isApart: settled[k]?.weight === 0,
    })),
  };
}
