import { describe, expect, it } from 'vitest';
import {
  type BenchCourse,
  blowHeard,
  courseAfter,
  readingMade,
} from '../../../src/domain/bench/bench-course';
import { instant, midiNote, seconds } from '../../../src/domain/tuning/units';
import { type BenchReadout, createBenchReadout } from '../../../src/state/bench/bench-readout';
import { strikeSample } from '../../domain/reading/strike-sample';

const heardBy = (readout: BenchReadout, ...events: number[]) =>
  events.map((event) => readout.hear(strikeSample({ event }))).at(-1) ?? null;

/** The course after three strikes. */
function opened(readout: BenchReadout): BenchCourse {
  const reading = heardBy(readout, 1, 2, 3);
  if (!reading) throw new Error('nothing was read');
  return readingMade(courseAfter(midiNote(74), []), reading);
}

describe('the readout of the bench', () => {
  it('gives a reading for every settled strike, and none for first looks', () => {
    const readout = createBenchReadout();
    expect(readout.hear(strikeSample({ provisional: true }))).toBeNull();
    expect(readout.phase.value.kind).toBe('heard');
    expect(readout.hear(strikeSample())?.heard).toHaveLength(1);
    expect(heardBy(readout, 2, 3)).toMatchObject({ settled: true });
  });

  it('adds a strike to the reading before it, but begins anew once blows have fallen', () => {
    const readout = createBenchReadout();
    expect(heardBy(readout, 1, 2)?.heard).toHaveLength(2);
    readout.beginAnew();
    expect(heardBy(readout, 3)?.heard).toHaveLength(1);
    expect(heardBy(readout, 4)?.heard).toHaveLength(2);
  });

  it('shows the reading before the blows until a strike answers them', () => {
    const readout = createBenchReadout();
    const course = blowHeard(opened(readout), instant(1));
    expect(readout.hear({ kind: 'knock', event: 4, at: seconds(4) })).toBeNull();
    readout.show(course);
    expect(readout.phase.value.kind).toBe('settled');
    expect(heardBy(readout, 5)?.heard).toHaveLength(1);
  });

  it('goes on with the reading of a course that is shown again', () => {
    const course = opened(createBenchReadout());
    const again = createBenchReadout();
    again.show(course);
    expect(heardBy(again, 4)?.heard).toHaveLength(4);
  });
});
