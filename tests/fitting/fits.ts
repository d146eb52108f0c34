// Two convex fits with a ridge, by Newton's method: a choice among candidates, and yes or no.
import { solvePositive } from './solve-positive';

export interface Choice {
  /** Features of each candidate. */
  readonly candidates: readonly Float64Array[];
  /** Which one was right. */
  readonly right: number;
  readonly weight: number;
}

export interface Question {
  readonly features: Float64Array;
  readonly isYes: boolean;
  readonly weight: number;
}

/** Newton's steps from nothing, and from weights that are nearly right. */
const rounds = 12;
const roundsAgain = 4;

export const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += (a[k] ?? 0) * (b[k] ?? 0);
  return sum;
};

/** Weights of a conditional logit; `ridge` against features of unit deviation. */
export function fitChoices(
  choices: readonly Choice[],
  ridge: number,
  start?: Float64Array,
): Float64Array {
  const size = choices[0]?.candidates[0]?.length ?? 0;
  const scale = deviations(
    choices.flatMap((each) => each.candidates),
    size,
  );
  const weights = start ? new Float64Array(start) : new Float64Array(size);
  for (let round = 0; round < (start ? roundsAgain : rounds); round++) {
    const gradient = new Float64Array(size);
    const curve = new Float64Array(size * size);
    for (const { candidates, right, weight } of choices) {
      const scores = candidates.map((each) => dot(each, weights));
      const top = Math.max(...scores);
      const parts = scores.map((score) => Math.exp(score - top));
      const all = parts.reduce((sum, part) => sum + part, 0);
      const mean = new Float64Array(size);
      candidates.forEach((each, n) => {
        const p = (parts[n] ?? 0) / all;
        for (let k = 0; k < size; k++) mean[k] = (mean[k] ?? 0) + p * (each[k] ?? 0);
      });
      const chosen = candidates[right] ?? mean;
      for (let k = 0; k < size; k++) {
        gradient[k] = (gradient[k] ?? 0) + weight * ((chosen[k] ?? 0) - (mean[k] ?? 0));
      }
      candidates.forEach((each, n) => {
        const p = weight * ((parts[n] ?? 0) / all);
        if (p > 1e-5) addSquare(curve, each, mean, p);
      });
    }
    step(weights, gradient, curve, scale, ridge);
  }
  return weights;
}

/** Weights of a logistic regression; the first feature should be a 1, whose weight is free. */
export function fitQuestions(
  questions: readonly Question[],
  ridge: number,
  start?: Float64Array,
): Float64Array {
  const size = questions[0]?.features.length ?? 0;
  const scale = deviations(
    questions.map((each) => each.features),
    size,
  );
  scale[0] = 1e-3;
  const weights = start ? new Float64Array(start) : new Float64Array(size);
  const none = new Float64Array(size);
  for (let round = 0; round < (start ? roundsAgain : rounds); round++) {
    const gradient = new Float64Array(size);
    const curve = new Float64Array(size * size);
    for (const { features, isYes, weight } of questions) {
      const p = 1 / (1 + Math.exp(-dot(features, weights)));
      const error = weight * ((isYes ? 1 : 0) - p);
      for (let k = 0; k < size; k++) gradient[k] = (gradient[k] ?? 0) + error * (features[k] ?? 0);
      addSquare(curve, features, none, weight * Math.max(1e-6, p * (1 - p)));
    }
    step(weights, gradient, curve, scale, ridge);
  }
  return weights;
}

function step(
  weights: Float64Array,
  gradient: Float64Array,
  curve: Float64Array,
  scale: Float64Array,
  ridge: number,
): void {
  const size = weights.length;
  for (let k = 0; k < size; k++) {
    const own = ridge * (scale[k] ?? 1) ** 2 + 1e-9;
    gradient[k] = (gradient[k] ?? 0) - own * (weights[k] ?? 0);
    for (let j = 0; j < k; j++) curve[j * size + k] = curve[k * size + j] ?? 0;
    curve[k * size + k] = (curve[k * size + k] ?? 0) + own;
  }
  const move = solvePositive(curve, gradient);
  for (let k = 0; k < size; k++) weights[k] = (weights[k] ?? 0) + (move[k] ?? 0);
}

/** Adds `p` times the square of `features − mean` to the lower half of `curve`. */
function addSquare(
  curve: Float64Array,
  features: Float64Array,
  mean: Float64Array,
  p: number,
): void {
  const size = features.length;
  const away = features.map((value, k) => value - (mean[k] ?? 0));
  for (let k = 0; k < size; k++) {
    const a = p * (away[k] ?? 0);
    if (a === 0) continue;
    for (let j = 0; j <= k; j++)
      curve[k * size + j] = (curve[k * size + j] ?? 0) + a * (away[j] ?? 0);
  }
}

function deviations(rows: readonly Float64Array[], size: number): Float64Array {
  return Float64Array.from({ length: size }, (_, k) => {
    let [sum, squares] = [0, 0];
    for (const row of rows) {
      sum += row[k] ?? 0;
      squares += (row[k] ?? 0) ** 2;
    }
    const mean = sum / rows.length;
    return Math.sqrt(Math.max(1e-6, squares / rows.length - mean * mean));
  });
}
