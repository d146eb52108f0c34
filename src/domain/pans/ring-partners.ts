// Which notes of a pan sound along with each other, because a partial of one lies where one of the other lies.
import { type MidiNote, midiNote } from '../tuning/units';
import { notesOf, type PanLayout } from './layout';

export type PartialKind = 'fundamental' | 'octave' | 'twelfth' | 'double-octave';

/** Times the fundamental, and the nearest step of equal temperament above it (the twelfth lies 1.955 cents over). */
export const partialKinds: Readonly<Record<PartialKind, { times: number; semitones: number }>> = {
  fundamental: { times: 1, semitones: 0 },
  octave: { times: 2, semitones: 12 },
  twelfth: { times: 3, semitones: 19 },
  'double-octave': { times: 4, semitones: 24 },
};
const kinds = Object.keys(partialKinds) as readonly PartialKind[];

export interface NotePartial {
  readonly note: MidiNote;
  readonly partial: PartialKind;
}

/** Two notes' partials that lie at the same pitch; `low` belongs to the lower note. */
export interface RingPair {
  readonly low: NotePartial;
  readonly high: NotePartial;
}

/**
 * All pairs of a layout, strongest coupling first (the lower of the two partials decides; common practice, no
 * source), then highest notes first. A note that is meant to have no third partial, or another one, has no
 * partner there; one whose third is to be found out may have either.
 */
export function ringPairs(layout: PanLayout): readonly RingPair[] {
  const wishes = new Map(
    layout.drums.flatMap((drum) => drum.notes.map((place) => [place.note, place.third] as const)),
  );
  const has = ({ note, partial }: NotePartial): boolean => {
    if (!wishes.has(note)) return false;
    const isThird = partial === 'twelfth' || partial === 'double-octave';
    const wish = wishes.get(note);
    return !isThird || wish === undefined || wish === partial;
  };
  const notes = [...new Set(notesOf(layout))].reverse();
  const pairs = couplings.flatMap(({ low, high, apart }) =>
    notes.map((note) => ({
      low: { note: midiNote(note - apart), partial: low },
      high: { note, partial: high },
    })),
  );
  return pairs.filter((pair) => has(pair.low) && has(pair.high));
}

/** Which partials of two notes meet, and how many semitones the notes then lie apart. */
const couplings = kinds
  .flatMap((low) => kinds.map((high) => ({ low, high })))
  .map(({ low, high }) => ({
    low,
    high,
    apart: partialKinds[low].semitones - partialKinds[high].semitones,
  }))
  .filter(({ apart }) => apart > 0)
  .sort(
    (one, other) =>
      partialKinds[one.low].times +
      partialKinds[one.high].times -
      partialKinds[other.low].times -
      partialKinds[other.high].times,
  );

export interface PartnerOfNote {
  /** The note's own partial that rings along when the other note sounds. */
  readonly own: PartialKind;
  readonly other: NotePartial;
}

/** The partners of one note, in the order of `pairs`. */
export function ringPartnersOf(
  note: MidiNote,
  pairs: readonly RingPair[],
): readonly PartnerOfNote[] {
  return pairs.flatMap(({ low, high }) => {
    if (low.note === note) return [{ own: low.partial, other: high }];
    return high.note === note ? [{ own: high.partial, other: low }] : [];
  });
}
