// The table of a sheet: one row for each note of the pan.

import type { SignsByNote } from '../knock-check/round-signs';
import { median } from '../numbers/averages';
import { standingOf } from '../reading/note-standing';
import type { Reading } from '../reading/reading';
import type { MarkKind, StopgapKind } from '../records/rack-records';
import type { NoteNow, PanNow } from '../rounds/pan-now';
import type { RoundChanges } from '../rounds/round-changes';
import { frequencyOf } from '../tuning/equal-temperament';
import type { ToleranceSet } from '../tuning/tolerances';
import { type Hertz, type MidiNote, type Seconds, seconds, shiftedBy } from '../tuning/units';
import type { MeasuredNote, SheetNote } from './sheet';

/** Time constants until the amplitude has fallen by 60 dB: ln(1000). */
const constantsTo60dB = Math.log(1000);

export interface NotesOfSheet {
  /** All notes of the layout, lowest first. */
  readonly notes: readonly MidiNote[];
  readonly now: Pick<PanNow, 'a4' | 'notes'>;
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  readonly stopgaps: ReadonlyMap<MidiNote, StopgapKind>;
  /** Those of the newest knock check, and whether the round of the table is a later one. */
  readonly signs: SignsByNote;
  readonly areSignsEarlier: boolean;
  readonly changes: RoundChanges | null;
  readonly limits: ToleranceSet;
}

/** The rows of the table. Marks are those that stand now, also where they are newer than the round. */
export function sheetNotes(of: NotesOfSheet): readonly SheetNote[] {
  const results = new Map(of.now.notes.map((each) => [each.note, each]));
  const changes = new Map(of.changes?.notes.map((each) => [each.note, each]));
  return of.notes.map((note) => {
    const found = results.get(note) ?? null;
    const mark = of.marks.get(note) ?? 'none';
    const { judged = null, reading = null } = found ?? {};
    return {
      note,
      mark,
      stopgap: of.stopgaps.get(note) ?? 'none',
      signs: {
        kinds: (of.signs.get(note) ?? []).map(({ kind }) => kind),
        areEarlier: of.areSignsEarlier,
      },
      measured: found && measuredNote(found, of.now.a4),
      benchAt: found?.takenIn === 'bench' ? found.readAt : null,
      readAt: found?.readAt ?? null,
      work: found?.work ?? 'none',
      moved: changes.get(note)?.beyondPan ?? null,
      ...standingOf({ judged, walking: reading?.walking ?? null, mark }, of.limits),
    };
  });
}

function measuredNote({ note, reading, againstBand }: NoteNow, a4: Hertz): MeasuredNote | null {
  if (!reading || againstBand === null) return null;
  const { fundamental, octave, octaveRival, third } = reading;
  return {
    // The reading's own cents are against equal temperament, without the note's offset.
    hz: shiftedBy(frequencyOf(note, a4), fundamental.cents),
    cents: againstBand,
    sigmaCents: fundamental.sigmaCents,
    isInferred: reading.isInferred,
    octave: octave?.centsFromOwn ?? null,
    octaveRival: octaveRival?.centsFromOwn ?? null,
    third: third && { kind: third.kind, cents: third.centsFromOwn },
    ring: ringOf(reading),
    strikes: reading.strikes.length,
    spread: reading.spread,
    walking: reading.walking,
  };
}

/** Of the middle one of the strikes. */
function ringOf({ strikes }: Reading): Seconds {
  const decays = strikes.map(({ fundamental }) => fundamental.decaySeconds);
  return seconds(constantsTo60dB * (median(decays) ?? 0));
}
