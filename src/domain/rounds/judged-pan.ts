// How the notes of a pan stand according to some readings: every note's standing, the pan pitch, the partners that
// beat, the worst first. One way for the result of a round and for how the pan stands now.

import { notesOf, type PanLayout } from '../pans/layout';
import { heardBeats, type PartnerBeat, partnerBeats } from '../pans/partner-beats';
import { ringPairs } from '../pans/ring-partners';
import { type JudgedNote, judgedNote, wishOf } from '../reading/judge-note';
import { keptReading } from '../reading/kept-reading';
import {
  countStandings,
  type JudgedStanding,
  type NoteStanding,
  shareOfGood,
  standingOf,
  standingRank,
} from '../reading/note-standing';
import { withOctaveByPartner } from '../reading/octave-by-partner';
import { type QuickVerdict, quickVerdict } from '../reading/quick-verdict';
import type { Reading } from '../reading/reading';
import type { MarkKind, ReadingRecord } from '../records/rack-records';
import { type PanPitch, panPitchOf } from '../tuning/pan-pitch';
import type { Reference } from '../tuning/reference';
import type { ToleranceSet } from '../tuning/tolerances';
import { type Cents, cents, type Hertz, type Instant, type MidiNote } from '../tuning/units';

export interface PanFindings {
  /** The reading that holds for each note that was read. */
  readonly readings: ReadonlyMap<MidiNote, ReadingRecord>;
  /** The mark that holds for each marked note (`standingMarks`). */
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  readonly layout: PanLayout;
  /** The pan's own A4, or the band's. */
  readonly a4: Hertz;
  /** Whether a reading is of one strike only, as in a quick round. */
  readonly isQuick: (reading: ReadingRecord) => boolean;
}

export interface Judging {
  readonly limits: ToleranceSet;
  readonly reference: Reference;
}

export interface NoteResult extends JudgedStanding {
  readonly note: MidiNote;
  /** Against equal temperament at the pan's A4, its octave told apart where the partner tells; null: not read. */
  readonly reading: Reading | null;
  /** When that reading was taken. */
  readonly readAt: Instant | null;
  /** The fundamental against its target at the band's pitch. */
  readonly againstBand: Cents | null;
  /** The fundamental against its target at the pan pitch; null also where that is unknown. */
  readonly againstPan: Cents | null;
  /** What the standing was judged on. */
  readonly judged: JudgedNote | null;
  readonly mark: MarkKind;
  /** In a quick round: whether one strike was enough to say how the note stands. */
  readonly quick: QuickVerdict | null;
}

export interface JudgedPan<Note extends NoteResult = NoteResult> {
  readonly a4: Hertz;
  /** What the fundamentals were judged against: the band where the pan pitch is unknown. */
  readonly reference: Reference;
  /** All notes of the layout, lowest first. */
  readonly notes: readonly Note[];
  readonly panPitch: PanPitch | null;
  /** Ring partners that are heard to beat, the widest interval first. */
  readonly beats: readonly PartnerBeat[];
  /** The notes that are not good, worst first; unread ones are not among them. */
  readonly worst: readonly Note[];
  readonly standings: Readonly<Record<NoteStanding, number>>;
}

/** Judges all notes of the layout; readings of notes that it no longer has are left out. */
export function judgedPan(findings: PanFindings, judging: Judging): JudgedPan {
  const { layout, a4 } = findings;
  const readings = readingsByNote(findings);
  const panPitch = panPitchBy(findings, readings);
  const reference = panPitch ? judging.reference : 'band';
  const base = reference === 'pan' && panPitch ? panPitch.cents : cents(0);
  const notes = [...new Set(notesOf(layout))].map((note): NoteResult => {
    const reading = readings.get(note) ?? null;
    const record = findings.readings.get(note);
    const wish = wishOf(layout, note);
    const mark = findings.marks.get(note) ?? 'none';
    const judged = reading && judgedNote(note, reading, wish, base);
    const againstBand = reading && judgedNote(note, reading, wish).fundamental.cents;
    const isQuick = record !== undefined && findings.isQuick(record);
    return {
      note,
      reading,
      readAt: record?.at ?? null,
      againstBand,
      againstPan: againstBand !== null && panPitch ? cents(againstBand - panPitch.cents) : null,
      judged,
      mark,
      quick: isQuick && judged ? quickVerdict(judged, judging.limits) : null,
      ...standingOf({ judged, walking: reading?.walking ?? null, mark }, judging.limits),
    };
  });
  return {
    a4,
    reference,
    notes,
    panPitch,
    beats: heardBeats(partnerBeats(ringPairs(layout), readings, a4)),
    worst: worstFirst(notes, judging.limits),
    standings: countStandings(notes.map(({ standing }) => standing)),
  };
}

/** Each note's reading, with its octave told from the partner's line where the partner was measured. */
function readingsByNote({ readings, a4 }: PanFindings): ReadonlyMap<MidiNote, Reading> {
  const found = new Map(
    [...readings].map(
      ([note, record]) => [note, keptReading(record, { a4, offset: cents(0) })] as const,
    ),
  );
  return new Map(
    [...found].map(([note, reading]) => {
      const partner = found.get((note + 12) as MidiNote)?.fundamental.cents ?? null;
      return [note, withOctaveByPartner(reading, partner)];
    }),
  );
}

/** From the notes of the layout that ring as they should: none dead, cracked or walking. */
function panPitchBy(
  { layout, marks, a4 }: PanFindings,
  readings: ReadonlyMap<MidiNote, Reading>,
): PanPitch | null {
  const pitched = [...new Set(notesOf(layout))].flatMap((note) => {
    const reading = readings.get(note);
    const mark = marks.get(note);
    if (!reading || reading.walking || mark === 'dead' || mark === 'cracked') return [];
    return [{ note, ...judgedNote(note, reading, wishOf(layout, note)).fundamental }];
  });
  return panPitchOf(pitched, a4);
}

function worstFirst(notes: readonly NoteResult[], limits: ToleranceSet): readonly NoteResult[] {
  const share = ({ judged }: NoteResult): number => (judged ? shareOfGood(judged, limits) : 0);
  return notes
    .filter(({ standing }) => standing !== 'good' && standing !== 'unread')
    .sort(
      (one, other) =>
        standingRank(other.standing) - standingRank(one.standing) ||
        share(other) - share(one) ||
        one.note - other.note,
    );
}
