// What blows do on this pan: the trade's wide expectation at first, then more and more what the pan's own sets say.

import { mahalanobis } from '../numbers/mahalanobis';
import { type Matrix3, mapThree, matrix3, type ThreePartials } from '../numbers/three-partials';
import { type BlowWhere, type SetForce, strengthOf } from '../records/blow-places';
import { olderFirst } from '../records/record-order';
import type { Instant, MidiNote } from '../tuning/units';
import type { BlowSet, NoteTraits } from './blow-sets';
import { type Effect, fitResponse, noiseOf } from './fit-response';
import type { BlowSpot } from './response-kernel';
import { blowScatter, expectedSquares, isTooFar } from './response-noise';

/** What a set of blows will change, each partial against its fixed target, cents. */
export interface Prediction {
  readonly mean: ThreePartials;
  /** Of the outcome, with both the doubt about the effect and the scatter from set to set. */
  readonly covariance: Matrix3;
  /** Of the expected change alone: what is not known about this place, without the scatter from set to set. */
  readonly doubt: Matrix3;
  /** Between these lies the outcome nine times in ten, for each partial by itself. */
  readonly interval90: ThreePartials<readonly [low: number, high: number]>;
}

export interface ResponseModel {
  /** What a set at this place will do; a usual set of light blows unless told. */
  predict(note: MidiNote, where: BlowWhere, force?: SetForce): Prediction;
  /** True if a set's effect contradicts what the other sets say: one in a hundred does by chance. */
  isContradicting(set: BlowSet): boolean;
  /** How many sets the model has learned from. */
  readonly setCount: number;
}

/**
 * Beyond this many (chosen, no source) the oldest are left out: the time to learn grows with the cube of their number.
 */
const mostSets = 100;
/** 95th percentile of the normal distribution. */
const ninetyPercent = 1.645;
const usualForce: SetForce = { firmness: 'light', strength: strengthOf('light', null) };
const nowhere: NoteTraits = { ring: null, size: 0 };

/**
 * Learns from the sets of one pan. The same sets in any order make the same model. `now` says how old they are;
 * `traits` come from the pan's layout and may be empty.
 */
export function learnResponse(
  sets: readonly BlowSet[],
  traits: ReadonlyMap<MidiNote, NoteTraits>,
  now: Instant,
): ResponseModel {
  const spotOf = (note: MidiNote, { place, side }: BlowWhere): BlowSpot => ({
    note,
    place,
    side,
    traits: traits.get(note) ?? nowhere,
  });
  const newest = [...sets].sort(olderFirst).slice(-mostSets);
  const learned = new Set(newest.map(({ id }) => id));
  const fit = fitResponse(
    newest.map((set) => ({ ...set, spot: spotOf(set.note, set), age: now - set.at })),
  );
  const effects = new Map<string, Effect>();
  const effectAt = (spot: BlowSpot): Effect => {
    const key = `${spot.note} ${spot.place} ${spot.side}`;
    const effect = effects.get(key) ?? fit.effectAt(spot);
    effects.set(key, effect);
    return effect;
  };
  return {
    setCount: newest.length,
    predict: (note, where, force = usualForce) =>
      predictionOf(effectAt(spotOf(note, where)), force),
    isContradicting(set) {
      if (learned.has(set.id)) return fit.contradicting.has(set.id);
      const { mean, covariance } = effectAt(spotOf(set.note, set));
      const noise = noiseOf({ ...set, age: 0 }, expectedSquares(mean, covariance));
      const { distance, values } = mahalanobis(
        mapThree(set.change, (moved, i) =>
          moved === null ? null : moved - set.strength * mean[i],
        ),
        matrix3((i, j) => set.strength ** 2 * covariance[i][j] + noise[i][j]),
      );
      return isTooFar(distance, values);
    },
  };
}

function predictionOf({ mean: effect, covariance: unsure }: Effect, force: SetForce): Prediction {
  const { strength } = force;
  const scatter = blowScatter(expectedSquares(effect, unsure), force);
  const mean = mapThree(effect, (each) => strength * each);
  const doubt = matrix3((i, j) => strength ** 2 * unsure[i][j]);
  const covariance = matrix3((i, j) => doubt[i][j] + scatter[i][j]);
  return {
    mean,
    covariance,
    doubt,
    interval90: mapThree(mean, (each, i) => {
      const reach = ninetyPercent * Math.sqrt(covariance[i][i]);
      return [each - reach, each + reach];
    }),
  };
}
