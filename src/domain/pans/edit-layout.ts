// Changes to a layout, each giving a new one: nothing throws, and overlaps are allowed while somebody is editing.
import { type Cents, type MidiNote, midiNote } from '../tuning/units';
import { done, type EditResult, refused, withNotes } from './edit-result';
import type { NotePlace, PanLayout, ThirdWish } from './layout';
import { notesOf } from './layout';
import { furthestRadius, hourOf } from './note-outline';
import { freeSpot, ringOf } from './note-spots';

export const hasNote = (layout: PanLayout, note: MidiNote): boolean =>
  layout.drums.some((drum) => drum.notes.some((place) => place.note === note));

/** The place of a note, or null for a note the pan does not have. */
export const placeOfNote = (layout: PanLayout, note: MidiNote): NotePlace | null =>
  layout.drums.flatMap((drum) => drum.notes).find((place) => place.note === note) ?? null;

/** Position of the drum that holds a note; −1 if none does. */
export const drumOf = (layout: PanLayout, note: MidiNote): number =>
  layout.drums.findIndex((drum) => drum.notes.some((place) => place.note === note));

/** The note at this place becomes `to`; what was set for its third partial and offset is dropped with the old note. */
export function renameNote(layout: PanLayout, note: MidiNote, to: MidiNote): EditResult {
  if (!hasNote(layout, note)) return refused('unknown');
  if (to === note) return done(layout);
  if (hasNote(layout, to)) return refused('doubled');
  return done(
    withPlace(layout, note, ({ third: _third, offset: _offset, ...place }) => ({
      ...place,
      note: to,
    })),
  );
}

/** Moves the middle of a note's oval; the oval stays within the rim. A note the pan does not have changes nothing. */
export const moveNote = (
  layout: PanLayout,
  note: MidiNote,
  to: { readonly clock: number; readonly radius: number },
): PanLayout =>
  withPlace(layout, note, (place) => {
    const radius = Math.min(furthestRadius(place), Math.max(0, to.radius));
    const moved = { ...place, clock: hourOf(to.clock), radius };
    return { ...moved, ring: ringOf(moved) };
  });

/** Adds a note where the drum has most room. */
export function addNote(layout: PanLayout, drum: number, note: MidiNote): EditResult {
  const target = layout.drums[drum];
  if (!target) return refused('unknown');
  if (hasNote(layout, note)) return refused('doubled');
  return done(
    withNotes(layout, drum, [...target.notes, { note, ...freeSpot(target.notes, note) }]),
  );
}

export const removeNote = (layout: PanLayout, note: MidiNote): PanLayout => ({
  ...layout,
  drums: layout.drums.map((drum) => ({
    ...drum,
    notes: drum.notes.filter((place) => place.note !== note),
  })),
});

/** Puts a note on another drum, where there is most room; its size and what it is meant to be stay. */
export function moveToDrum(layout: PanLayout, note: MidiNote, drum: number): EditResult {
  const place = placeOfNote(layout, note);
  if (!place || !layout.drums[drum]) return refused('unknown');
  if (drumOf(layout, note) === drum) return done(layout);
  const without = removeNote(layout, note);
  const others = without.drums[drum]?.notes ?? [];
  const { clock, radius, ring } = freeSpot(others, note, place);
  return done(withNotes(without, drum, [...others, { ...place, clock, radius, ring }]));
}

/** What a note's third partial is to be; null lets the ear find out. */
export const setThird = (layout: PanLayout, note: MidiNote, wish: ThirdWish | null): PanLayout =>
  withPlace(layout, note, ({ third: _before, ...place }) =>
    wish === null ? place : { ...place, third: wish },
  );

/** How far from equal temperament a note is meant to be. */
export const setOffset = (layout: PanLayout, note: MidiNote, offset: Cents): PanLayout =>
  withPlace(layout, note, ({ offset: _before, ...place }) =>
    offset === 0 ? place : { ...place, offset },
  );

/** Somebody has compared the layout with the pan, so nothing about it is doubtful any more. */
export function withoutDoubts({ doubts: _doubts, ...layout }: PanLayout): PanLayout {
  return layout;
}

/** A note that is most likely to be added next: the lowest one missing, or the one above the highest. */
export function noteToAdd(layout: PanLayout): MidiNote {
  const notes = notesOf(layout);
  const [lowest, highest] = [notes[0], notes.at(-1)];
  if (lowest === undefined || highest === undefined) return midiNote(60);
  for (let note = lowest + 1; note < highest; note++) {
    if (!hasNote(layout, midiNote(note))) return midiNote(note);
  }
  return midiNote(highest < 127 ? highest + 1 : lowest - 1);
}

const withPlace = (
  layout: PanLayout,
  note: MidiNote,
  change: (place: NotePlace) => NotePlace,
): PanLayout => ({
  ...layout,
  drums: layout.drums.map((drum) =>
    drum.notes.some((place) => place.note === note)
      ? { ...drum, notes: drum.notes.map((place) => (place.note === note ? change(place) : place)) }
      : drum,
  ),
});
