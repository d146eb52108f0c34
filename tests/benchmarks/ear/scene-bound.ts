// What the noise of a scene alone would cost the best estimator.
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { quantile } from '../../ear-scenes/statistics';
import { boundCents } from '../../sounds/cramer-rao';
import { pinkDensity } from '../../sounds/noise';
import type { Scene, TruePartial } from '../../sounds/scene';

/** The window of the bound after the strike, s. */
const from = 0.13;
const to = 0.7;
/** Time constant of the glide in the second bound, s. */
const glideSeconds = 0.04;
const drawsPerScene = 200;

/** One standard error by the bound, cents. */
const boundOf = ({ truth, sampleRate }: Scene, partial: TruePartial, glides: boolean): number =>
  boundCents(
    {
      hz: partial.hz,
      amplitude: partial.amplitude * Math.exp(-from / partial.decaySeconds),
      decaySeconds: partial.decaySeconds,
      seconds: to - from,
      noiseVariance: truth.noise ** 2 * pinkDensity(partial.hz, sampleRate),
      sampleRate,
    },
    glides ? glideSeconds : null,
  );

/** Below this 95 % of the errors of an estimator at the bound would lie, cents. */
export function boundQuantile(
  scenes: readonly Scene[],
  partialOf: (scene: Scene) => TruePartial,
  glides: boolean,
): number {
  const gaussian = gaussianFrom(seededRandom(4));
  const errors = scenes.flatMap((scene) => {
    const sigma = boundOf(scene, partialOf(scene), glides);
    return Array.from({ length: drawsPerScene }, () => Math.abs(sigma * gaussian()));
  });
  return quantile(errors, 0.95);
}
