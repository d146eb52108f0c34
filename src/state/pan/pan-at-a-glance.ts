// How an open pan stands: the result of its newest finished round, or its marks alone before the first.
import { notesOf } from '../../domain/pans/layout';
import type { CardSettings } from '../../domain/rack/card-settings';
import { type NoteStanding, standingOf } from '../../domain/reading/note-standing';
import { standingMarks } from '../../domain/records/standing/standing-marks';
import { resultOf } from '../../domain/rounds/result-of-round';
import type { NoteResult, RoundResult } from '../../domain/rounds/round-result';
import type { MidiNote } from '../../domain/tuning/units';
import type { OpenPan } from './pan-model';

export interface PanAtAGlance {
  /** Null before the first finished round. */
  readonly result: RoundResult | null;
  readonly notes: ReadonlyMap<MidiNote, GlancedNote>;
  readonly standings: Readonly<Record<NoteStanding, number>>;
}

export type GlancedNote = Pick<NoteResult, 'note' | 'standing' | 'reason' | 'judged'>;

/** The pan as it is judged now. */
export function panAtAGlance(pan: OpenPan, settings: CardSettings): PanAtAGlance {
  const [newest] = pan.rounds;
  const result = newest ? resultOf(newest, pan.readings, pan.records, settings) : null;
  const marks = standingMarks(pan.records);
  const notes: readonly GlancedNote[] =
    result?.notes ??
    [...new Set(notesOf(pan.current.fields.layout))].map((note) => ({
      note,
      judged: null,
      ...standingOf({ judged: null, mark: marks.get(note)?.mark ?? 'none' }, settings.limits),
    }));
  const standings = { good: 0, playable: 0, out: 0, avoid: 0, unread: 0 };
  for (const { standing } of notes) standings[standing]++;
  return { result, notes: new Map(notes.map((each) => [each.note, each])), standings };
}
