// What each partial of a note needs, and in which steps it is mended.
import { describe, expect, it } from 'vitest';
import type { NoteErrors } from '../../../src/domain/advice/note-errors';
import {
  casesInOrder,
  needsOf,
  needsOfTheRest,
  stepsFor,
} from '../../../src/domain/advice/note-fault';
import type { ThreePartials } from '../../../src/domain/numbers/three-partials';

/** Fundamental against its target, octave and third against the own fundamental. */
const errorsOf = (values: ThreePartials, judged: ThreePartials = [1, 1, 1]): NoteErrors => ({
  values,
  limits: [5, 5, 10],
  weights: [judged[0] / 25, judged[1] / 25, judged[2] / 100],
});
const faults = (values: ThreePartials, judged?: ThreePartials) =>
  stepsFor(needsOf(errorsOf(values, judged))).map((step) => step.map(({ fault }) => fault));

describe('a partial', () => {
  it('that is in tune with a flat fundamental must rise with it; one that is where it should be stays', () => {
    expect(needsOf(errorsOf([-12, 0, 0]))).toEqual(['up', 'up', 'up']);
    expect(needsOf(errorsOf([-12, 12, 12]))).toEqual(['up', 'stay', 'stay']);
    expect(needsOf(errorsOf([-12, -8, 12]))).toEqual(['up', 'up', 'stay']);
  });

  it('that is within its limit either way is free to move along or to stay', () => {
    expect(needsOf(errorsOf([-6, -6, 3]))).toEqual(['up', 'up', 'free']);
  });

  it('that is off over a true fundamental moves alone, and the fundamental stays', () => {
    expect(needsOf(errorsOf([4, 0, -12]))).toEqual(['stay', 'stay', 'up']);
    expect(needsOf(errorsOf([0, 6, 0]))).toEqual(['stay', 'down', 'stay']);
  });

  it('that is not judged is not asked for', () => {
    expect(needsOf(errorsOf([-12, 0, 0], [1, 0, 0]))).toEqual(['up', 'unjudged', 'unjudged']);
    expect(faults([-12, 0, 0], [1, 0, 0])).toEqual([['fundamental-flat']]);
  });
});

describe('a fundamental within its limit', () => {
  it('may go on to its target where it alone puts another partial out', () => {
    expect(needsOfTheRest(errorsOf([-4, 6, 0]))).toEqual(['up', 'stay', 'free']);
    const [first] = casesInOrder(errorsOf([-4, 6, 0]));
    expect(first?.map(({ trade }) => trade.fault)).toEqual(
      expect.arrayContaining(['octave-sharp', 'fundamental-flat']),
    );
  });

  it('is not moved to suit a partial that is off by itself', () => {
    expect(needsOfTheRest(errorsOf([0, 6, 0]))).toBeNull();
    expect(needsOfTheRest(errorsOf([-4, -6, 0]))).toBeNull();
  });
});

describe('the steps', () => {
  it('begin with the fundamental and what goes along with it, then each axis by itself', () => {
    expect(faults([-12, 20, 12])).toEqual([['fundamental-flat'], ['octave-sharp']]);
    expect(faults([12, -30, -12])).toEqual([['fundamental-sharp'], ['octave-flat']]);
    expect(faults([0, -12, 18])).toEqual([['octave-flat'], ['third-sharp']]);
  });

  it('hold both ways where the third may go along or stay', () => {
    expect(faults([-12, -8, 3])).toEqual([['all-flat', 'fundamental-and-octave-flat']]);
  });
});
