// Readings after given strikes, for tests.
import { addStrike, type Reading } from '../../../src/domain/reading/reading';
import { type StrikeSketch, strikeSample } from './strike-sample';

/** The reading after these strikes; they are numbered from 1 unless told otherwise. */
export function readingAfter(...sketches: StrikeSketch[]): Reading {
  const reading = sketches.reduce<Reading | null>(
    (sum, sketch, k) => addStrike(sum, strikeSample({ event: k + 1, ...sketch })).reading,
    null,
  );
  if (!reading) throw new Error('no strikes');
  return reading;
}
