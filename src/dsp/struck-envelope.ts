// The loudness course of a struck note: up at once, then down. Speech, wind and music rise late or again, hum stays.

/** Frames hold at least half a period of the lowest bass notes, s. */
const frameSeconds = 0.02;
/** The first 40 ms may lie this far below the loudest frame (the octave blooms late), dB. */
const slowestAttackDb = -9.5;
/** After 60 ms the loudness may climb by this much over its lowest (beating, energy exchange), dB. */
const largestRiseDb = 7.5;
/** From 70 ms on it falls at least that fast (a bass that rings for 5 s), dB/s … */
const slowestFall = 10.5;
/** … which shows only in sound of this length, for partials exchange energy, s. */
const longEnough = 0.5;

const decibel = (ratio: number): number => 10 * Math.log10(ratio + 1e-20);

/**
 * Whether the loudness from `onset` to `end` (samples) goes like that of a struck note.
 * `roomDb` is the level of the room's own noise, dB of full scale (root mean square).
 */
export function isStruckEnvelope(
  samples: Float32Array,
  onset: number,
  end: number,
  sampleRate: number,
  roomDb: number,
): boolean {
  const frame = Math.round(frameSeconds * sampleRate);
  const powers: number[] = [];
  for (let start = onset; start + frame <= end; start += frame) {
    powers.push(meanPower(samples, start, start + frame) + 1e-14);
  }
  if (powers.length < 4) return false;
  const attack = Math.max(powers[0] ?? 0, powers[1] ?? 0);
  if (decibel(attack / Math.max(...powers)) < slowestAttackDb) return false;
  let lowest = Number.POSITIVE_INFINITY;
  let rise = 1;
  for (let k = 2; k + 1 < powers.length; k++) {
    const mean = ((powers[k] ?? 0) + (powers[k + 1] ?? 0)) / 2;
    lowest = Math.min(lowest, mean);
    if (k > 3) rise = Math.max(rise, mean / lowest);
  }
  if (decibel(rise) > largestRiseDb) return false;
  return fallsAway(samples, onset, end, sampleRate, 10 ** (roomDb / 10));
}

function fallsAway(
  samples: Float32Array,
  onset: number,
  end: number,
  sampleRate: number,
  roomPower: number,
): boolean {
  const at = (seconds: number): number => Math.round(seconds * sampleRate);
  if (end - onset < at(longEnough)) return true;
  const first = meanPower(samples, onset + at(0.02), onset + at(0.12)) - roomPower;
  const last = meanPower(samples, end - at(0.12), end - at(0.01)) - roomPower;
  const apart = (end - onset) / sampleRate - 0.135;
  return last <= 0 || decibel(first / last) >= slowestFall * apart;
}

/**
 * How much louder 60 to 100 ms after the onset are than its first 20 ms, over what a note with the time constant
 * `decaySeconds` would be, dB: a voice swells, then stops; a struck note falls from the start, its octave's bloom aside.
 */
export function swellDb(
  samples: Float32Array,
  onset: number,
  sampleRate: number,
  decaySeconds: number,
): number {
  const at = (seconds: number): number => onset + Math.round(seconds * sampleRate);
  const early = meanPower(samples, onset, at(0.02));
  const later = meanPower(samples, at(0.06), at(0.1));
  return decibel((later + 1e-14) / (early + 1e-14)) + decibel(Math.E) * 2 * (0.07 / decaySeconds);
}

function meanPower(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return sum / Math.max(1, to - from);
}
