// A general-purpose period detector on the same strikes: one window from 0.1 s after the onset, told nothing.
import { PitchDetector } from 'pitchy';
import { nearestNote, standardA4 } from '../../../src/domain/tuning/equal-temperament';
import { hertz } from '../../../src/domain/tuning/units';
import type { Sound } from './hear-take';

const frame = 4096;
const from = 0.1;
const detector = PitchDetector.forFloat32Array(frame);

/** The frequency that pitchy finds for a strike at `onset` (s), Hz; null where it finds none. */
export function periodHz({ samples, sampleRate }: Sound, onset: number): number | null {
  const first = Math.round((onset + from) * sampleRate);
  const window = new Float32Array(frame);
  window.set(samples.subarray(first, first + frame));
  const [hz] = detector.findPitch(window, sampleRate);
  return hz > 0 ? hz : null;
}

/** The note nearest to it. */
export function periodNote(sound: Sound, onset: number): number | null {
  const hz = periodHz(sound, onset);
  return hz === null ? null : nearestNote(hertz(hz), standardA4);
}
