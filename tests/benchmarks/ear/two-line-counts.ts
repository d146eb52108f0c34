// Notes made apart from all scenes, with a second line at one partial or at none: what the whole ear says of them.
import type { MeasuredPartial } from '../../../src/domain/measurement/strike';
import { centsBetween } from '../../../src/domain/tuning/units';
import { finallyHeard } from '../../dsp/listen-to';
import type { DoubletCounts } from '../../ear-scenes/doublets';
import { guidedTo } from '../../ear-scenes/hear-scene';
import { type DoublePartial, twoLineNote } from '../../sounds/two-line-note';

const nearCents = 1.5;

/** `asTwo` counts partials with two lines: the one at `double`, or any of the three where that is null. */
export function twoLineCounts(
  seeds: readonly number[],
  double: DoublePartial | null,
): DoubletCounts {
  let [refused, asTwo, bothRight] = [0, 0, 0];
  for (const seed of seeds) {
    const { samples, sampleRate, truth } = twoLineNote(seed, double);
    const heard = finallyHeard(samples, sampleRate, guidedTo(truth.note)).find(
      (each) => each.kind === 'strike',
    );
    if (heard?.kind !== 'strike') {
      refused++;
      continue;
    }
    const pairs: Readonly<Record<DoublePartial, readonly (MeasuredPartial | null | undefined)[]>> =
      {
        fundamental: [heard.fundamental, heard.fundamentalRival],
        octave: [heard.octave, heard.octaveRival],
        third: [heard.third, heard.thirdRival],
      };
    if (double === null) {
      asTwo += Object.values(pairs).filter(([, rival]) => rival).length;
      continue;
    }
    const lines = pairs[double].flatMap((line) => (line ? [line.hz] : [])).sort((a, b) => a - b);
    if (lines.length < 2) continue;
    asTwo++;
    const truths = [truth[double], truth.rivalHz ?? 0].sort((a, b) => a - b);
    const isRight = lines.every((hz, n) => Math.abs(centsBetween(truths[n] ?? 0, hz)) <= nearCents);
    if (isRight) bothRight++;
  }
  return { scenes: seeds.length, refused, asTwo, bothRight };
}
