// Cuts the sounds of all onsets out of a recording, as the ear is given them.
import type { Heard } from '../../src/domain/measurement/strike';
import { seconds } from '../../src/domain/tuning/units';
import { StrikeListener } from '../../src/dsp/strike-listener';
import type { Sound } from '../benchmarks/strikes/hear-take';
import { anyNote } from '../dsp/listen-to';

export interface CutStrike {
  /** Onset at `leadSeconds`. */
  readonly segment: Float32Array;
  /** Onset in the recording, s. */
  readonly at: number;
}

/** The sound around each onset that the ear would judge in its settled verdict. */
export function cutStrikes({ samples, sampleRate }: Sound): readonly CutStrike[] {
  const cut: CutStrike[] = [];
  const listener = new StrikeListener(sampleRate, anyNote, (sound): Heard => {
    if (!sound.provisional)
      cut.push({ segment: sound.segment.slice(0, sound.count), at: sound.at });
    return {
      kind: 'refused',
      event: sound.event,
      at: seconds(sound.at),
      reason: 'unclear',
      note: null,
      candidates: [],
    };
  });
  listener.push(new Float32Array(samples));
  listener.finish();
  return cut;
}
