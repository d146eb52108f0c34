// Time to compute one strike: 1 s of sound through the whole ear, both verdicts.
import { performance } from 'node:perf_hooks';
import { StrikeListener } from '../../../src/dsp/strike-listener';
import { anyNote } from '../../dsp/listen-to';
import { panOnly } from '../../ear-scenes/hear-scene';
import { sessionBlock, sessionOf, sessionRate } from '../../ear-scenes/session';
import { median, quantile } from '../../ear-scenes/statistics';
import type { Scene } from '../../sounds/scene';

export interface StrikeTimes {
  /** Milliseconds on the clock, median and 95 % of the strikes. */
  readonly clock: number;
  readonly clock95: number;
  /** Milliseconds of processor, all threads of the process together: what a busy machine does not stretch. */
  readonly processor: number;
}

interface Timed {
  readonly clock: number;
  readonly processor: number;
}

function timed(work: () => void): Timed {
  const before = process.cpuUsage();
  const start = performance.now();
  work();
  const clock = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  return { clock, processor: (user + system) / 1000 };
}

const summaryOf = (times: readonly Timed[]): StrikeTimes => ({
  clock: median(times.map(({ clock }) => clock)),
  clock95: quantile(
    times.map(({ clock }) => clock),
    0.95,
  ),
  processor: median(times.map(({ processor }) => processor)),
});

const passes = 3;

/**
 * For each scene the second that begins 50 ms before its strike; the first ten only warm up. `once`: as measured the
 * first time; `least`: the least of three times, which a busy machine stretches less.
 */
export function strikeTimes(scenes: readonly Scene[]): {
  readonly once: StrikeTimes;
  readonly least: StrikeTimes;
} {
  const listeners = new Map<number, StrikeListener>();
  const pass = (): readonly Timed[] =>
    scenes
      .map((scene) => {
        const { sampleRate } = scene;
        const listener = listeners.get(sampleRate) ?? new StrikeListener(sampleRate, panOnly);
        listeners.set(sampleRate, listener);
        return timeOf(scene, listener);
      })
      .slice(10);
  const times = Array.from({ length: passes }, pass);
  const least = (times[0] ?? []).map((_, n) => leastOf(times.map((each) => each[n])));
  return { once: summaryOf(times[0] ?? []), least: summaryOf(least) };
}

const leastOf = (times: readonly (Timed | undefined)[]): Timed => ({
  clock: Math.min(...times.map((time) => time?.clock ?? Number.POSITIVE_INFINITY)),
  processor: Math.min(...times.map((time) => time?.processor ?? Number.POSITIVE_INFINITY)),
});

function timeOf({ samples, sampleRate, truth }: Scene, listener: StrikeListener): Timed {
  const first = Math.round((truth.at - 0.05) * sampleRate);
  const quiet = samples.subarray(0, first);
  listener.push(quiet);
  const second = samples.subarray(first, first + sampleRate);
  const time = timed(() => {
    for (let from = 0; from < second.length; from += sessionBlock) {
      listener.push(second.subarray(from, from + sessionBlock));
    }
  });
  listener.push(quiet);
  return time;
}

/** The second around each strike of half an hour of listening: the first and the last thirty strikes. */
export function sessionTimes(): { readonly first: StrikeTimes; readonly last: StrikeTimes } {
  const seconds = 1800;
  const { strikes, fill } = sessionOf(6, { seconds, shortest: 10, longest: 22 });
  const listener = new StrikeListener(sessionRate, anyNote);
  const block = new Float32Array(sessionBlock);
  const times = new Map<number, Timed>();
  for (let at = 0; at < seconds * sessionRate; at += block.length) {
    fill(block, at);
    const { clock, processor } = timed(() => listener.push(block));
    const since = strikes.find((strike) => Math.abs(at / sessionRate - strike.at - 0.45) < 0.5);
    if (!since) continue;
    const sum = times.get(since.at) ?? { clock: 0, processor: 0 };
    times.set(since.at, { clock: sum.clock + clock, processor: sum.processor + processor });
  }
  const all = [...times.values()];
  return { first: summaryOf(all.slice(5, 35)), last: summaryOf(all.slice(-30)) };
}
