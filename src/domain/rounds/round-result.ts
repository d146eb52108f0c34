// What a round found: every note's standing, the pan pitch, the partners that beat, and the worst first.

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
import {
  type MarkKind,
  type ReadingRecord,
  type RoundConditions,
  type RoundId,
  type RoundStart,
  type RoundWay,
  roundOf,
} from '../records/rack-records';
import { newestPerNote } from '../records/record-order';
import { type PanPitch, panPitchOf } from '../tuning/pan-pitch';
import type { Reference } from '../tuning/reference';
import type { ToleranceSet } from '../tuning/tolerances';
import { type Cents, cents, type Hertz, type Instant, type MidiNote } from '../tuning/units';

export interface RoundFindings {
  readonly start: RoundStart;
  /** Readings of this round without erased ones, in any order; the newest of a note holds. */
  readonly readings: readonly ReadingRecord[];
  /** The mark that holds for each marked note (`standingMarks`). */
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  readonly layout: PanLayout;
  /** The pan's own A4, or the band's. */
  readonly a4: Hertz;
}

export interface Judging {
  readonly limits: ToleranceSet;
  readonly reference: Reference;
}

export interface NoteResult extends JudgedStanding {
  readonly note: MidiNote;
  /** Against equal temperament at the round's A4, its octave told apart where the partner tells; null: not read. */
  readonly reading: Reading | null;
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

export interface RoundResult {
  readonly round: RoundId;
  readonly at: Instant;
  /** That of its beginning. */
  readonly turn?: Instant;
  readonly way: RoundWay;
  readonly a4: Hertz;
  readonly conditions: RoundConditions;
  /** Taken while the pan had not settled: just unloaded, or in the sun. */
  readonly isProvisional: boolean;
  /** What the fundamentals were judged against: the band where the pan pitch is unknown. */
  readonly reference: Reference;
  /** All notes of the layout, lowest first. */
  readonly notes: readonly NoteResult[];
  readonly panPitch: PanPitch | null;
  /** Ring partners that are heard to beat, the widest interval first. */
  readonly beats: readonly PartnerBeat[];
  /** The notes that are not good, worst first; unread ones are not among them. */
  readonly worst: readonly NoteResult[];
  readonly standings: Readonly<Record<NoteStanding, number>>;
}

/** The result of a round, whole or in part; readings of notes the layout no longer has are left out. */
export function roundResult(findings: RoundFindings, judging: Judging): RoundResult {
  const { start, layout, a4 } = findings;
  const readings = readingsByNote(findings);
  const panPitch = panPitchOfRound(findings, readings);
  const reference = panPitch ? judging.reference : 'band';
  const base = reference === 'pan' && panPitch ? panPitch.cents : cents(0);
  const notes = [...new Set(notesOf(layout))].map((note): NoteResult => {
    const reading = readings.get(note) ?? null;
    const wish = wishOf(layout, note);
    const mark = findings.marks.get(note) ?? 'none';
    const judged = reading && judgedNote(note, reading, wish, base);
    const againstBand = reading && judgedNote(note, reading, wish).fundamental.cents;
    return {
      note,
      reading,
      againstBand,
      againstPan: againstBand !== null && panPitch ? cents(againstBand - panPitch.cents) : null,
      judged,
      mark,
      quick: start.way === 'quick' && judged ? quickVerdict(judged, judging.limits) : null,
      ...standingOf({ judged, walking: reading?.walking ?? null, mark }, judging.limits),
    };
  });
  return {
    round: roundOf(start),
    at: start.at,
    ...(start.turn === undefined ? {} : { turn: start.turn }),
    way: start.way,
    a4,
    conditions: start.conditions,
    isProvisional: isUnsettled(start.conditions),
    reference,
    notes,
    panPitch,
    beats: heardBeats(partnerBeats(ringPairs(layout), readings, a4)),
    worst: worstFirst(notes, judging.limits),
    standings: countStandings(notes.map(({ standing }) => standing)),
  };
}

/** A pan known to be cooling or warming; false where nobody said how it stood. */
export const isUnsettled = ({ standing }: RoundConditions): boolean =>
  standing === 'unloaded' || standing === 'sun';

/** The newest reading of each note, its octave told from its partner's where the partner was measured. */
function readingsByNote({ readings, a4 }: RoundFindings): ReadonlyMap<MidiNote, Reading> {
  const found = new Map(
    [...newestPerNote(readings)].map(
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
function panPitchOfRound(
  { layout, marks, a4 }: RoundFindings,
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
