// The analysis thread reuses its buffers: after its first strikes it makes no array any more.
import { expect, it } from 'vitest';
import { AnalysisSession } from '../../src/analysis/session/analysis-session';
import type { FromEarWorker } from '../../src/analysis/session/protocol';
import { arraysMadeBy } from '../memory/count-arrays';
import { type Scene, strikeScene } from '../sounds/scene';

const blockLength = 2048;
const sampleRate = 44100;

/** Lone notes and octave pairs, cut into blocks beforehand, because cutting makes arrays. */
function blocksOf(scenes: readonly Scene[]): readonly Float32Array<ArrayBuffer>[] {
  return scenes.flatMap(({ samples }) =>
    Array.from({ length: Math.floor(samples.length / blockLength) }, (_, n) =>
      Float32Array.from(samples.subarray(n * blockLength, (n + 1) * blockLength)),
    ),
  );
}

it('makes no array and no buffer for strikes it has room for, and hardly any for others', () => {
  const scenes = (first: number, count: number): Scene[] =>
    Array.from({ length: count }, (_, n) =>
      strikeScene(first + n, { sampleRate, seconds: 1.5, pair: n % 2 === 0 }),
    );
  const posted: FromEarWorker[] = [];
  const session = new AnalysisSession((message) => posted.push(message));
  session.handle({ type: 'begin', sampleRate });
  const feed = (blocks: readonly Float32Array<ArrayBuffer>[]): void => {
    for (const samples of blocks) session.handle({ type: 'samples', samples });
  };
  const strikes = (): number =>
    posted.filter(
      (each) => each.type === 'heard' && each.heard.kind === 'strike' && !each.heard.provisional,
    ).length;
  const first = blocksOf(scenes(1, 10));
  const others = blocksOf(scenes(101, 10));
  expect(arraysMadeBy(() => feed(first))).toBeGreaterThan(100);
  expect(arraysMadeBy(() => feed(first))).toBe(0);
  const before = strikes();
  // A strike borrows more than a thousand arrays; only one that needs more of them at once than any before makes some.
  const made = arraysMadeBy(() => feed(others));
  const heard = strikes() - before;
  expect(heard).toBeGreaterThan(5);
  expect(made / heard).toBeLessThan(4);
});
