// Invented pans with rounds, for tests of the screens that show what was found.
import { notesOf } from '../../src/domain/pans/layout';
import { lowCLead } from '../../src/domain/pans/layouts/low-c-lead';
import {
  type MarkKind,
  type PanFields,
  panId,
  type RackRecord,
  recordId,
  roundId,
} from '../../src/domain/records/rack-records';
import { instant, midiNote } from '../../src/domain/tuning/units';
import {
  day,
  endSample,
  firstDay,
  markSample,
  type NoteSketch,
  readingSample,
  type StartSketch,
  startSample,
} from '../domain/rounds/round-sample';
import { sampleEdit } from '../storage/rack/rack-sample';

export const leadNotes: readonly number[] = notesOf(lowCLead);

export interface RoundSketch extends StartSketch {
  /** What differs from a note that is true, by note. */
  readonly off?: Readonly<Record<number, Omit<NoteSketch, 'note'>>>;
  /** The whole pan against A = 440 Hz. */
  readonly shift?: number;
  readonly only?: readonly number[];
  readonly isOpen?: boolean;
}

/** The records of one pan, called "pan-1". */
export function panWith(
  fields: Partial<PanFields>,
  rounds: readonly RoundSketch[],
  marks: Readonly<Record<number, MarkKind>> = {},
): readonly RackRecord[] {
  const edit = sampleEdit('edit-1', 'Heron');
  return [
    { ...edit, fields: { ...edit.fields, ...fields } },
    ...rounds.flatMap((sketch) => recordsOf(sketch, fields)),
    ...Object.entries(marks).map(([note, mark]) => ({
      ...markSample(Number(note), mark),
      at: instant(firstDay + (rounds.at(-1)?.day ?? 0) * day),
    })),
  ];
}

function recordsOf(sketch: RoundSketch, fields: Partial<PanFields>): readonly RackRecord[] {
  const { off = {}, shift = 0, only, isOpen = false } = sketch;
  const notes = (only ?? notesOf(fields.layout ?? lowCLead)).map(midiNote);
  const start = { ...startSample(sketch), order: notes };
  const strikes = sketch.way === 'quick' ? 1 : 3;
  return [
    start,
    ...notes.map((note, k) => {
      const values = { note, strikes, ...usual(note), ...off[note] };
      return readingSample(start, { ...values, fundamental: values.fundamental + shift }, k + 1);
    }),
    ...(isOpen ? [] : [endSample(start)]),
  ];
}

/** Small differences that follow from the note, so that no two are alike: all of them good. */
const usual = (note: number): { fundamental: number; octave: number; third: number } => ({
  fundamental: ((note * 7) % 9) - 4,
  octave: ((note * 5) % 7) - 3,
  third: ((note * 11) % 13) - 6,
});

/** The same records as those of another pan. */
export const asPan = (id: string, records: readonly RackRecord[]): readonly RackRecord[] =>
  records.map((record) => {
    const own = { ...record, pan: panId(id), id: recordId(`${id}-${record.id}`) };
    return 'round' in own && own.round !== null
      ? ({ ...own, round: roundId(`${id}-${own.round}`) } as RackRecord)
      : (own as RackRecord);
  });
