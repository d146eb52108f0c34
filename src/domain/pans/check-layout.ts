// Finds what is wrong with a layout: notes missing or doubled, ovals outside the rim or over each other.
import { noteName } from '../tuning/note-names';
import { midiNote } from '../tuning/units';
import { type NotePlace, notesOf, type PanLayout } from './layout';

const outlinePoints = 48;

/** Faults of a layout in words; empty if it is chromatic without gaps and can be drawn. */
export function checkLayout(layout: PanLayout): readonly string[] {
  const faults: string[] = [];
  const notes = notesOf(layout);
  notes.forEach((note, k) => {
    const before = notes[k - 1];
    if (before === undefined) return;
    if (note === before) faults.push(`${noteName(note)} is there twice`);
    for (let missing = before + 1; missing < note; missing++) {
      faults.push(`${noteName(midiNote(missing))} is missing`);
    }
  });
  for (const drum of layout.drums) {
    drum.notes.forEach((place, k) => {
      if (outlineOf(place).some(([x, y]) => Math.hypot(x, y) > 1)) {
        faults.push(`${noteName(place.note)} reaches over the rim`);
      }
      for (const other of drum.notes.slice(k + 1)) {
        if (outlineOf(place).some((point) => isInside(other, point))) {
          faults.push(`${noteName(place.note)} and ${noteName(other.note)} overlap`);
        }
      }
    });
  }
  return faults;
}

type Point = readonly [x: number, y: number];

const middleOf = (place: NotePlace): Point => {
  const angle = (place.clock * Math.PI) / 6;
  return [place.radius * Math.sin(angle), -place.radius * Math.cos(angle)];
};

function outlineOf(place: NotePlace): readonly Point[] {
  const turn = (place.clock * Math.PI) / 6;
  const [x, y] = middleOf(place);
  return Array.from({ length: outlinePoints }, (_, k) => {
    const angle = (2 * Math.PI * k) / outlinePoints;
    const along = place.along * Math.cos(angle);
    const across = place.across * Math.sin(angle);
    return [
      x + along * Math.cos(turn) - across * Math.sin(turn),
      y + along * Math.sin(turn) + across * Math.cos(turn),
    ] as const;
  });
}

function isInside(place: NotePlace, [px, py]: Point): boolean {
  const turn = (place.clock * Math.PI) / 6;
  const [x, y] = middleOf(place);
  const along = (px - x) * Math.cos(turn) + (py - y) * Math.sin(turn);
  const across = -(px - x) * Math.sin(turn) + (py - y) * Math.cos(turn);
  return (along / place.along) ** 2 + (across / place.across) ** 2 < 1;
}
