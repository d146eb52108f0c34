// A click: broadband power at one moment, as the seam of lost samples leaves it. No exchange of energy makes one.
import { upperMedian } from '../numbers/nth-smallest';

/**
 * Block length, s; the time around the moment that is searched, s; and the wider time it is compared with, s (chosen,
 * no source).
 */
const blockSeconds = 0.001;
const nearSeconds = 0.02;
const aroundSeconds = 0.06;
/**
 * The loudest block near the moment over the median of those around it: a seam in a clean note stands 20 dB over it,
 * blocks of noise alone reach 4 dB (chi-square of some forty values).
 */
const standsOut = 10 ** 0.8;

/** Whether `samples` (at `rate`) have a click near sample `at`, above what lines can be: in their fourth differences. */
export function hasClick(samples: Float32Array, at: number, rate: number): boolean {
  const size = Math.max(8, Math.round(blockSeconds * rate));
  const around = Math.round(aroundSeconds * rate);
  const near = Math.round(nearSeconds * rate);
  const powers: number[] = [];
  let loudest = 0;
  for (let from = Math.max(2, at - around); from < at + around; from += size) {
    if (from + size + 2 > samples.length) break;
    const power = roughness(samples, from, from + size);
    if (Math.abs(from + size / 2 - at) <= near) loudest = Math.max(loudest, power);
    powers.push(power);
  }
  return loudest > standsOut * upperMedian(powers);
}

function roughness(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) {
    const outer = samples[n - 2] + samples[n + 2];
    const inner = samples[n - 1] + samples[n + 1];
    sum += (outer - 4 * inner + 6 * samples[n]) ** 2;
  }
  return sum;
}
