// Weighs features by weights that were fitted.

/** One line of a fitted score: what a feature is called, and what one unit of it is worth, nepers of odds. */
export type Weights = Readonly<Record<string, number>>;

/** Weights in the order of `names`, for `scoreOf`; a name without a weight counts nothing. */
export const inOrder = (names: readonly string[], weights: Weights): Float64Array =>
  Float64Array.from(names, (name) => weights[name] ?? 0);

export function scoreOf(features: readonly number[], weights: Float64Array): number {
  let score = 0;
  for (let k = 0; k < features.length; k++) score += features[k] * weights[k];
  return score;
}
