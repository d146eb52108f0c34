// Values on the bench as they are judged: by the user's reference and the note's wish, the octave told from its partner's.

import {
  type JudgedNote,
  type JudgedValues,
  judgedNote,
  wishOf,
} from '../../domain/reading/judge-note';
import { keptReading } from '../../domain/reading/kept-reading';
import { withOctaveByPartner } from '../../domain/reading/octave-by-partner';
import { newestPerNote } from '../../domain/records/record-order';
import { cents, type MidiNote } from '../../domain/tuning/units';
import type { BenchSurroundings } from './open-bench';

const octave = 12;

/** Judges readings and single strikes of one note. */
export function judgeOf(
  { readings, a4, layout, reference }: BenchSurroundings,
  note: MidiNote,
): (values: JudgedValues) => JudgedNote {
  const record = newestPerNote(readings).get((note + octave) as MidiNote);
  const partner = record ? keptReading(record, { a4, offset: cents(0) }).fundamental.cents : null;
  const wish = layout ? wishOf(layout, note) : {};
  return (values) => judgedNote(note, withOctaveByPartner(values, partner), wish, reference);
}
