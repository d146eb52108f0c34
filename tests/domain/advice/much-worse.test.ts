import { describe, expect, it } from 'vitest';
import { expectedMuchWorse } from '../../../src/domain/advice/much-worse';
import { matrix3 } from '../../../src/domain/numbers/three-partials';

const errors = { values: [-12, 0, 0], limits: [5, 5, 10], weights: [0.04, 0.04, 0.01] } as const;
const certainly = (change: number) => ({
  mean: [change, change, change] as const,
  covariance: matrix3((i, j) => (i === j ? 1e-6 : 0)),
});

describe('a set of blows makes a note much worse', () => {
  it('by a blow that is far too hard, one in fifty and worth two and a half, where it ends well without', () => {
    // From −12 by 12 to 0; by 30 to +18, which is more than 5 farther off than −12 was.
    expect(expectedMuchWorse(errors, errors, certainly(12), 1)).toBeCloseTo(0.02, 6);
    // By 28 to +16 only.
    expect(expectedMuchWorse(errors, errors, certainly(11.2), 1)).toBeCloseTo(0, 6);
    // Three blows of 4, one of them worth 10, are 18: from −12 to +6.
    expect(expectedMuchWorse(errors, errors, certainly(12), 3)).toBeCloseTo(0, 6);
    // Three of 8, any of them worth 20, are 36: from −12 to +24.
    expect(expectedMuchWorse(errors, errors, certainly(24), 3)).toBeCloseTo(1 - 0.98 ** 3, 6);
  });

  it('half the time where it ends on the line, one blow in fifty aside', () => {
    const onTheLine = { ...certainly(0), mean: [-5, -5, -5] as const };
    // By 12.5 with a blow too hard: surely beyond.
    expect(expectedMuchWorse(errors, errors, onTheLine, 1)).toBeCloseTo(0.98 / 2 + 0.02, 6);
  });

  it('not where it is so already, nor for a partial that is not judged', () => {
    const opening = { values: [-5, 0, 0] as const };
    expect(expectedMuchWorse(errors, opening, certainly(-12), 1)).toBe(0);
    const octave = { ...certainly(0), mean: [0, 40, 0] as const };
    expect(expectedMuchWorse(errors, errors, octave, 1)).toBeCloseTo(1, 6);
    const top = { ...errors, weights: [0.04, 0, 0] as const };
    expect(expectedMuchWorse(top, top, octave, 1)).toBeCloseTo(0, 6);
  });
});
