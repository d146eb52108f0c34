// The row on how soon a verdict comes: here only the sound that it waits for.
import { StrikeListener } from '../../../src/dsp/strike-listener';
import { panOnly } from '../../ear-scenes/hear-scene';
import { median } from '../../ear-scenes/statistics';
import type { Scene } from '../../sounds/scene';
import type { Row } from './print-table';

/** Samples in a block, as the browser's audio thread has them. */
const block = 128;

/** The rest, capture, messages, computing and the screen, is measured in a real browser by another benchmark. */
export function verdictRows(scenes: readonly Scene[]): readonly Row[] {
  const first: number[] = [];
  const settled: number[] = [];
  for (const { samples, sampleRate, truth } of scenes) {
    const listener = new StrikeListener(sampleRate, panOnly);
    for (let from = 0; from < samples.length; from += block) {
      const heard = listener.push(samples.subarray(from, from + block));
      const after = (from + block) / sampleRate - truth.at;
      for (const each of heard) {
        if (each.kind === 'strike') (each.provisional ? first : settled).push(after);
      }
    }
  }
  return [
    {
      quantity: 'first / settled verdict after the strike',
      target: '<= 0.35 / 0.8 s',
      measured: `median ${median(first).toFixed(3)} / ${median(settled).toFixed(3)} s of sound (${first.length} and ${settled.length} of ${scenes.length} scenes); with capture, computing and screen of a real browser: npm run bench:latency`,
      isMet: median(first) <= 0.35 && median(settled) <= 0.8,
    },
  ];
}
