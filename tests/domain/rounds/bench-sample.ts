// What the bench keeps between rounds, for tests: readings outside of rounds, and sets of blows.
import {
  type Blows,
  type ReadingRecord,
  type RoundStart,
  recordId,
} from '../../../src/domain/records/rack-records';
import { instant, midiNote } from '../../../src/domain/tuning/units';
import { type NoteSketch, readingSample } from './round-sample';

const minute = 60_000;

/** A reading of the bench, so many minutes after the beginning of `since`, or before it. */
export const benchReading = (
  since: RoundStart,
  sketch: NoteSketch,
  minutes: number,
): ReadingRecord => ({
  ...readingSample(null, sketch, minutes),
  at: instant(since.at + minutes * minute),
});

/** A logged set of blows on a note of the pan of `since`. */
export const blowsSample = (since: RoundStart, note: number, minutes: number): Blows => ({
  kind: 'blows',
  shape: 1,
  id: recordId(`blows-${note}-${minutes}`),
  pan: since.pan,
  at: instant(since.at + minutes * minute),
  round: null,
  note: midiNote(note),
  logged: { place: 'border', side: 'above', firmness: 'light' },
  count: 3,
  before: null,
  after: null,
});
