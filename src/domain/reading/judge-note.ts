// A note's values as they are judged: against its own target, with the third partial it should have.
import type { NotePlace, PanLayout } from '../pans/layout';
import { type Cents, cents, type MidiNote } from '../tuning/units';
import type { Judged } from '../tuning/verdict';
import type { ReadingValues } from './summarise';

/** What the layout says about a note. */
export type NoteWish = Pick<NotePlace, 'third' | 'offset'>;

/** What judging needs of a reading. */
export type JudgedValues = Pick<ReadingValues, 'fundamental' | 'octave' | 'octaveRival' | 'third'> &
  Partial<Pick<ReadingValues, 'isInferred'>>;

/** A note ready to be judged, with one standard error for each value. */
export interface JudgedNote extends Judged {
  readonly fundamental: ReadingValues['fundamental'];
  readonly octave: ReadingValues['octave'];
  readonly octaveRival: ReadingValues['octaveRival'];
  readonly third: ReadingValues['third'];
}

export const wishOf = (layout: PanLayout, note: MidiNote): NoteWish =>
  layout.drums.flatMap((drum) => drum.notes).find((place) => place.note === note) ?? {};

/**
 * The values of `note` with the fundamental against its target: equal temperament, plus the note's offset,
 * plus `reference` (0 for the band's pitch, the pan pitch for the pan's). A third partial of another kind than
 * the note is meant to have is not judged.
 */
export function judgedNote(
  note: MidiNote,
  values: JudgedValues,
  wish: NoteWish,
  reference: Cents = cents(0),
): JudgedNote {
  const { fundamental, isInferred = false, octave, octaveRival, third } = values;
  const isWanted = third !== null && (wish.third === undefined || wish.third === third.kind);
  return {
    note,
    fundamental: {
      ...fundamental,
      cents: cents(fundamental.cents - (wish.offset ?? 0) - reference),
    },
    isInferred,
    octave,
    octaveRival,
    third: isWanted ? third : null,
  };
}
