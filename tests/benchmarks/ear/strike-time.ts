// Time to compute one strike: 1 s of sound through the whole ear, both verdicts.
import { performance } from 'node:perf_hooks';
import { StrikeListener } from '../../../src/dsp/strike-listener';
import type { Scene } from '../../sounds/scene';
import { panOnly } from './hear-scene';
import { median, quantile } from './statistics';

const block = 4096;

/** Milliseconds of CPU for each scene's second after 50 ms before its strike; the first rounds warm up. */
export function strikeTimes(scenes: readonly Scene[]): { median: number; slowest: number } {
  const listeners = new Map<number, StrikeListener>();
  const times: number[] = [];
  scenes.forEach(({ samples, sampleRate, truth }, n) => {
    const listener = listeners.get(sampleRate) ?? new StrikeListener(sampleRate, panOnly);
    listeners.set(sampleRate, listener);
    const first = Math.round((truth.at - 0.05) * sampleRate);
    listener.push(samples.subarray(0, first));
    const second = samples.subarray(first, first + sampleRate);
    const start = performance.now();
    for (let from = 0; from < second.length; from += block) {
      listener.push(second.subarray(from, from + block));
    }
    if (n >= 10) times.push(performance.now() - start);
    // Quiet before the next strike.
    listener.push(samples.subarray(0, first));
  });
  return { median: median(times), slowest: quantile(times, 0.95) };
}
