import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { judgedNote, wishOf } from '../../../src/domain/reading/judge-note';
import { quickVerdict } from '../../../src/domain/reading/quick-verdict';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { readingAfter } from './reading-sample';
import type { StrikeSketch } from './strike-sample';

const verdict = (sketch: StrikeSketch) => {
  const reading = readingAfter(sketch);
  return quickVerdict(judgedNote(reading.note, reading, wishOf(lowCLead, reading.note)));
};

describe('a single strike', () => {
  // One strike's standard error is 0.3 cent at best, so what it says is sure within about a cent.
  it('finds a note fine that is surely good in all its partials', () => {
    expect(verdict({ fundamental: 3, octave: -3, third: 7 })).toBe('fine');
    expect(verdict({ fundamental: 0, octave: null, third: null })).toBe('fine');
  });

  it('finds a note out that is surely beyond playable in one of them', () => {
    expect(verdict({ fundamental: -15 })).toBe('out');
    expect(verdict({ octave: 15 })).toBe('out');
    expect(verdict({ third: -28 })).toBe('out');
  });

  it('asks for three strikes in between, and near a limit', () => {
    expect(verdict({ fundamental: 8 })).toBe('three-strikes');
    expect(verdict({ fundamental: 5 })).toBe('three-strikes');
    expect(verdict({ fundamental: 12.6 })).toBe('three-strikes');
  });

  it('asks for three strikes when it is unsure itself', () => {
    expect(verdict({ fundamental: 0, sigma: 2.5 })).toBe('three-strikes');
    expect(verdict({ fundamental: 15, sigma: 2.5 })).toBe('three-strikes');
  });

  it('looks at the fundamental only above C6', () => {
    expect(verdict({ note: 86, fundamental: 1, octave: 40, third: 60 })).toBe('fine');
  });

  it('holds two lines at the octave against a note only if both are bad', () => {
    expect(verdict({ octave: 0, rival: 16 })).toBe('fine');
    expect(verdict({ octave: 16, rival: 0 })).toBe('fine');
    expect(verdict({ octave: 16, rival: -20 })).toBe('out');
  });

  it('calls no note fine that is not good, and none out that is playable, in 4000 noisy strikes', () => {
    const random = seededRandom(11);
    const gaussian = gaussianFrom(random);
    const sigma = 0.4;
    let wrong = 0;
    let decided = 0;
    for (let trial = 0; trial < 4000; trial++) {
      const truth = 40 * random() - 20;
      const said = verdict({ fundamental: truth + sigma * gaussian(), sigma, octave: 0, third: 0 });
      if (said !== 'three-strikes') decided++;
      // Limits hold on whole cents: 5.5 and 12.5.
      if (said === 'fine' && Math.abs(truth) > 5.5) wrong++;
      if (said === 'out' && Math.abs(truth) < 12.5) wrong++;
    }
    expect(wrong, `${wrong} wrong of ${decided} decided`).toBeLessThanOrEqual(2);
    expect(decided / 4000, 'share decided').toBeGreaterThan(0.45);
  });
});
