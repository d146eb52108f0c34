import { expect, it } from 'vitest';
import {
  type Mark,
  type ReadingRecord,
  recordId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { refusedInRound } from '../../../src/domain/rounds/refused-in-round';
import { instant, midiNote } from '../../../src/domain/tuning/units';
import { sampleReading } from '../../storage/rack/rack-sample';
import { startSample } from './round-sample';

const start = startSample({ day: 1 });
const round = roundOf(start);
const d4 = midiNote(62);
const reading = (at: number, refused?: ReadingRecord['refused']): ReadingRecord => ({
  ...sampleReading(`reading-${at}`, start, d4),
  id: recordId(`reading-${at}`),
  at: instant(at),
  ...(refused ? { refused } : {}),
});
const mark = (at: number, refused: Mark['refused'], of = round): Mark => ({
  kind: 'mark',
  shape: 1,
  id: recordId(`mark-${at}`),
  pan: start.pan,
  at: instant(at),
  round: of,
  note: d4,
  mark: 'skipped',
  ...(refused ? { refused } : {}),
});

it('the refused blows of a note in a round are those of its newest reading and of the marks after it', () => {
  const readings = [
    reading(5, { knocks: 1, heardAsSeveral: 2 }),
    reading(1, { knocks: 9, heardAsSeveral: 9 }),
  ];
  const marks = [
    mark(2, { knocks: 9, heardAsSeveral: 0 }),
    mark(7, { knocks: 0, heardAsSeveral: 3 }),
    mark(8, { knocks: 9, heardAsSeveral: 9 }, roundOf(startSample({ day: 2 }))),
  ];
  expect([...refusedInRound(round, readings, marks)]).toEqual([
    [d4, { knocks: 1, heardAsSeveral: 5 }],
  ]);
});

it('none are known of records of older apps', () => {
  expect(refusedInRound(round, [reading(1)], [mark(2, undefined)]).size).toBe(0);
});
