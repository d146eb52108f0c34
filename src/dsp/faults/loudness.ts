// How loud a strike was for this microphone in this room.
// All limits are chosen, no source.

import type { Loudness } from '../../domain/measurement/strike';
import { dbOfAmplitude, dbOfPower } from '../../domain/numbers/decibel-levels';

/** A strike less than this above the room's noise is soft: the noise then shifts its partials, dB. */
export const softOverRoomDb = 20;
/** Softer peaks lose their partials in the converter's own noise on many phones, dB of full scale. */
export const softPeakDb = -45;
/** Louder peaks are near the top of the converter, and a phone's automatic gain may distort them, dB of full scale. */
export const loudPeakDb = -3;

/** Length of a frame, s; the loudest frame is compared with the room. */
const frameSeconds = 0.02;
/** The loudest frame is looked for within this time after the onset, s. */
const attackSeconds = 0.3;

/**
 * Grade of the strike in `samples[onset…end)` (−1…1). `roomDb` is the level of the room's noise before it, dB of full
 * scale (root mean square), as the strike's own loudest 20 ms are measured against it.
 */
export function loudnessOf(
  samples: Float32Array,
  onset: number,
  end: number,
  sampleRate: number,
  roomDb: number,
): Loudness {
  const until = Math.min(end, onset + Math.round(attackSeconds * sampleRate));
  const frame = Math.max(1, Math.round(frameSeconds * sampleRate));
  let peak = 0;
  let loudest = 0;
  for (let start = onset; start < until; start += frame) {
    const stop = Math.min(until, start + frame);
    let power = 0;
    for (let n = start; n < stop; n++) {
      const size = Math.abs(samples[n]);
      peak = Math.max(peak, size);
      power += size * size;
    }
    loudest = Math.max(loudest, power / frame);
  }
  const peakDb = dbOfAmplitude(peak, 1e-10);
  if (peakDb > loudPeakDb) return 'loud';
  const overRoom = dbOfPower(loudest, 1e-20) - roomDb;
  return peakDb < softPeakDb || overRoom < softOverRoomDb ? 'soft' : 'good';
}
