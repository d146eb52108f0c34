import { describe, expect, it } from 'vitest';
import { noteHistory } from '../../../src/domain/rounds/note-history';
import { cents, hertz } from '../../../src/domain/tuning/units';
import { day, firstDay, readingSample, startSample } from './round-sample';

const aim = { a4: hertz(440), offset: cents(0) };

describe('the history of a note', () => {
  const first = startSample({ day: 0, conditions: { temperature: 28 } });
  const second = startSample({ day: 90, conditions: { standing: 'sun' } });
  const readings = [
    readingSample(second, { note: 62, fundamental: -8, octave: 2, third: null }),
    readingSample(first, { note: 62, fundamental: -3, octave: 1, third: 5 }),
  ];

  it('is a point for each round, oldest first, with temperature and doubts', () => {
    const points = noteHistory(readings, [first, second], aim);
    expect(points.map(({ at }) => Math.floor((at - firstDay) / day))).toEqual([0, 90]);
    expect(points[0]?.fundamental.cents).toBeCloseTo(-3, 6);
    expect(points[0]?.octave?.cents).toBeCloseTo(1, 6);
    expect(points[0]?.third).toMatchObject({ kind: 'double-octave' });
    expect(points[0]).toMatchObject({ temperature: 28, isProvisional: false });
    expect(points[1]).toMatchObject({ temperature: null, isProvisional: true, third: null });
  });

  it('is set against the offset and the A4 it is asked for', () => {
    const [point] = noteHistory(readings, [], { a4: hertz(442), offset: cents(-2) });
    // A442 = +7.851 cents, by arithmetic.
    expect(point?.fundamental.cents).toBeCloseTo(-3 - 7.851 + 2, 3);
  });

  it('takes the newest reading of a round, and every reading outside one', () => {
    const again = readingSample(first, { note: 62, fundamental: 1 }, 40);
    const alone = [5, 9].map((minutes) => readingSample(null, { note: 62 }, minutes));
    const points = noteHistory([again, ...readings, ...alone], [first, second], aim);
    expect(points).toHaveLength(4);
    expect(points.filter(({ round }) => round === null)).toHaveLength(2);
    expect(points.find(({ at }) => at === again.at)?.fundamental.cents).toBeCloseTo(1, 6);
  });

  it('marks single strikes provisional and leaves an open octave out', () => {
    const quick = readingSample(first, { note: 62, strikes: 1, octave: 3, rival: 14 });
    const [point] = noteHistory([quick], [first], aim);
    expect(point).toMatchObject({ isProvisional: true, octave: null });
  });
});
