// Two lines at the octave: whether both are reported, and none where there is one.
import { centsBetween } from '../../src/domain/tuning/units';
import { strikeScene } from '../sounds/scene';

import { guidedTo, hearScene } from './hear-scene';

export interface DoubletCounts {
  readonly scenes: number;
  readonly refused: number;
  /** Strikes with a rival at the octave. */
  readonly asTwo: number;
  /** Of these, both lines within 1 cent of their truths. */
  readonly bothRight: number;
}

const nearCents = 1;

/** Scenes of `seeds` with or without the octave partner ringing 9 to 18 cents beside the octave. */
export function doubletCounts(seeds: readonly number[], pair: boolean): DoubletCounts {
  let refused = 0;
  let asTwo = 0;
  let bothRight = 0;
  for (const seed of seeds) {
    const scene = strikeScene(seed, { pair });
    const heard = hearScene(scene, guidedTo(scene.truth.note));
    if (heard?.kind !== 'strike') {
      refused++;
      continue;
    }
    const { octave, octaveRival } = heard;
    if (octaveRival === null) continue;
    asTwo++;
    const truths = [scene.truth.octave.hz, scene.truth.pairHz ?? 0];
    const lines = [octave?.hz ?? 0, octaveRival.hz];
    // Which of the two is the note's own shows only when the partner is damped.
    const isRight = [lines, [...lines].reverse()].some((order) =>
      order.every((hz, n) => Math.abs(centsBetween(truths[n] ?? 0, hz)) <= nearCents),
    );
    if (isRight) bothRight++;
  }
  return { scenes: seeds.length, refused, asTwo, bothRight };
}
