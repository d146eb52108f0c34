// What the bench knows about its note, gathered for the advice: slow on a pan with many sets, so it runs where nobody
// has to wait for it.

import type { AdviceRules } from '../advice/advice';
import { type AdviceAnswer, answerTo } from '../advice/answer-question';
import type { NoteSound } from '../advice/beyond-limits';
import { type BlowSet, blowSetsOf } from '../advice/blow-sets';
import { lowerMedian } from '../numbers/averages';
import type { PanLayout } from '../pans/layout';
import type { JudgedNote } from '../reading/judge-note';
import { keptReading } from '../reading/kept-reading';
import type { Reading } from '../reading/reading';
import type { Blows, MarkKind, ReadingRecord } from '../records/rack-records';
import { newestPerNote } from '../records/record-order';
import { standardA4 } from '../tuning/equal-temperament';
import { cents, type Instant, type MidiNote } from '../tuning/units';
import { type BenchCourse, changesBetween } from './bench-course';

/** Plain data that can be handed to another thread. */
export interface BenchQuestion {
  readonly layout: PanLayout;
  readonly judged: JudgedNote;
  /** The newest reading of the note. */
  readonly reading: Reading;
  readonly course: BenchCourse;
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  readonly readings: readonly ReadingRecord[];
  readonly blows: readonly Blows[];
  readonly rules: AdviceRules;
  readonly now: Instant;
}

export function answerOnBench(question: BenchQuestion): AdviceAnswer {
  const { layout, judged, reading, course, marks, readings, blows, rules, now } = question;
  const panSets = blowSetsOf(blows, readings);
  const others = [...newestPerNote(readings)].filter(([note]) => note !== course.note);
  const note = {
    layout,
    judged,
    isSettled: reading.settled,
    walking: reading.walking,
    decaySeconds: decayOf(reading),
    marks,
    others: new Map(others.map(([each, record]) => [each, soundOf(record)])),
    sets: setsInARow(course, panSets),
  };
  return answerTo({ note, rules, panSets, now });
}

/**
 * A note that is measured again without blows in between has moved by less than this, cents, unless something else was
 * done to it (as far apart as strikes may lie that agree).
 */
const still = 2.5;

/** The newest logged sets of this bench with nothing unknown done to the note in between, oldest first. */
function setsInARow({ steps }: BenchCourse, sets: readonly BlowSet[]): readonly BlowSet[] {
  const byId = new Map(sets.map((set) => [set.id, set]));
  const row: BlowSet[] = [];
  for (let k = steps.length - 1; k > 0; k--) {
    const [before, step] = [steps[k - 1], steps[k]];
    if (!before || !step) break;
    if (step.blows !== null) {
      const set = byId.get(step.kept.blows ?? '');
      if (!set) break;
      row.unshift(set);
    } else if (before.reading && step.reading) {
      const [moved] = changesBetween(before.reading, step.reading);
      if (moved && Math.abs(moved.cents) > still) break;
    }
  }
  return row;
}

function soundOf(record: ReadingRecord): NoteSound {
  const reading = keptReading(record, { a4: standardA4, offset: cents(0) });
  return { hasOctave: reading.octave !== null, decaySeconds: decayOf(reading) };
}

/** The middle time constant of the fundamental. */
const decayOf = ({ strikes }: Reading): number | null =>
  lowerMedian(
    strikes
      .filter(({ isInferred }) => !isInferred)
      .map(({ fundamental }) => fundamental.decaySeconds),
  );
