// The response of a simulated pan as one would know it who had tried every place many times: the bound for the advice.

import type { ResponseModel } from '../../../src/domain/advice/response-model';
import { blowScatter, expectedSquares } from '../../../src/domain/advice/response-noise';
import { mapThree, matrix3, type ThreePartials } from '../../../src/domain/numbers/three-partials';
import { type BlowWhere, strengthOf, usualCount } from '../../../src/domain/records/blow-places';
import type { MidiNote } from '../../../src/domain/tuning/units';
import { createHiddenResponse } from '../../../src/practice-pan/hidden-response';
import { seededRandom } from '../../../src/practice-pan/seeded-random';

const blows = 400;
const nothing = matrix3(() => 0);

export function toldResponse(seed: number): ResponseModel {
  const response = createHiddenResponse(seed);
  const effects = new Map<string, ThreePartials>();
  const effectOf = (note: MidiNote, where: BlowWhere): ThreePartials => {
    const key = `${note} ${where.place} ${where.side}`;
    const known = effects.get(key);
    if (known) return known;
    const random = seededRandom(seed * 97 + 1);
    const moved = Array.from({ length: blows }, () =>
      response.oneBlow(note, where, 'light', random),
    );
    const effect = mapThree(
      [0, 1, 2] as const,
      (k) => (usualCount / blows) * moved.reduce((sum, each) => sum + each[k], 0),
    );
    effects.set(key, effect);
    return effect;
  };
  return {
    setCount: 0,
    isContradicting: () => false,
    predict(note, where, force = { firmness: 'light', strength: strengthOf('light', null) }) {
      const effect = effectOf(note, where);
      const mean = mapThree(effect, (each) => force.strength * each);
      return {
        mean,
        covariance: blowScatter(expectedSquares(effect, nothing), force),
        doubt: nothing,
        interval90: mapThree(mean, (each) => [each, each] as const),
      };
    },
  };
}
