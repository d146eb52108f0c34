// The result of a round on a low-C lead, from sketches of its notes, for tests.
import { notesOf, type PanLayout } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { MarkKind } from '../../../src/domain/records/rack-records';
import { type RoundResult, roundResult } from '../../../src/domain/rounds/round-result';
import type { Reference } from '../../../src/domain/tuning/reference';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, midiNote } from '../../../src/domain/tuning/units';
import { type NoteSketch, readingSample, type StartSketch, startSample } from './round-sample';

export const leadNotes: readonly number[] = notesOf(lowCLead);

export interface ResultSketch extends StartSketch {
  readonly marks?: Readonly<Record<number, MarkKind>>;
  readonly reference?: Reference;
  readonly layout?: PanLayout;
}

export function resultSample(notes: readonly NoteSketch[], sketch: ResultSketch = {}): RoundResult {
  const { marks = {}, reference = 'band', layout = lowCLead, a4 = 440 } = sketch;
  const start = startSample(sketch);
  return roundResult(
    {
      start,
      readings: notes.map((note, k) => readingSample(start, note, k + 1)),
      marks: new Map(Object.entries(marks).map(([note, mark]) => [midiNote(Number(note)), mark])),
      layout,
      a4: hertz(a4),
    },
    { limits: usualTolerances, reference },
  );
}

/** Every note of the lead, each with what `of` says about it. */
export const wholeLead = (of: (note: number, k: number) => Omit<NoteSketch, 'note'>) =>
  leadNotes.map((note, k) => ({ note, ...of(note, k) }));
