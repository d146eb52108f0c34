import { describe, expect, it } from 'vitest';
import { fitLine, fitScatteredLine } from '../../../src/domain/numbers/line-fit';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';

const points = (ys: readonly number[], sigma = 1) => ys.map((y, x) => ({ x, y, sigma }));

describe('a line through points', () => {
  it('that lie on one has its slope and no residual', () => {
    const line = fitLine(points([1, 3, 5, 7]), 0);
    expect(line?.slope).toBeCloseTo(2, 12);
    expect(line?.residual).toBeCloseTo(0, 12);
    // σ of a slope: σ / √Σ(x − x̄)², and Σ is 5 here.
    expect(line?.sigma).toBeCloseTo(1 / Math.sqrt(5), 12);
  });

  it('goes by the sure ones', () => {
    const sure = points([0, 1, 2], 0.01);
    expect(fitLine([...sure, { x: 3, y: 30, sigma: 100 }], 0)?.slope).toBeCloseTo(1, 3);
  });

  it('is none where all lie at one x, or there is only one', () => {
    expect(fitLine([], 1)).toBeNull();
    expect(fitLine(points([4]), 1)).toBeNull();
    expect(
      fitLine(
        [
          { x: 2, y: 1, sigma: 1 },
          { x: 2, y: 5, sigma: 1 },
        ],
        1,
      ),
    ).toBeNull();
    const expected = { usual: 1, weighs: 2, least: 0 };
    expect(fitScatteredLine(points([4]), expected)).toBeNull();
  });

  it('is as unsure as its points scatter, whatever errors they state', () => {
    const expected = { usual: 0.3, weighs: 1, least: 0.3 };
    const quiet = fitScatteredLine(points([0, 1, 2, 3, 4], 0.01), expected);
    const loud = fitScatteredLine(points([0, 6, -3, 8, 2], 0.01), expected);
    // Not less than the least scatter allows: 0.3 / √10.
    expect(quiet?.sigma).toBeCloseTo(0.3 / Math.sqrt(10), 3);
    expect(loud?.sigma).toBeGreaterThan(1);
  });

  it('states an error that holds: of 500 lines through noise, about 68 % lie within one', () => {
    const normal = gaussianFrom(seededRandom(14));
    let within = 0;
    for (let n = 0; n < 500; n++) {
      const noisy = Array.from({ length: 12 }, (_, x) => 0.5 * x + 2 * normal());
      const line = fitScatteredLine(points(noisy, 0), { usual: 1, weighs: 1, least: 0 });
      if (line && Math.abs(line.slope - 0.5) < line.sigma) within++;
    }
    expect(within / 500).toBeGreaterThan(0.6);
    expect(within / 500).toBeLessThan(0.75);
  });
});
