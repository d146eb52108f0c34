// The loudness course of a struck note: up at once, then down. Speech, wind and music rise late or again.

const frameSeconds = 0.01;
/** The first 20 ms may lie this far below the loudest frame (the octave blooms late), dB. */
const slowestAttackDb = -9.5;
/** After 60 ms the loudness may climb by this much over its lowest (beating, energy exchange), dB. */
const largestRiseDb = 8.5;

/** Whether the loudness from `onset` to `end` (samples) goes like that of a struck note. */
export function isStruckEnvelope(
  samples: Float32Array,
  onset: number,
  end: number,
  sampleRate: number,
): boolean {
  const frame = Math.round(frameSeconds * sampleRate);
  const energies: number[] = [];
  for (let start = onset; start + frame <= end; start += frame) {
    let energy = 0;
    for (let n = 0; n < frame; n++) energy += (samples[start + n] ?? 0) ** 2;
    energies.push(energy / frame + 1e-14);
  }
  if (energies.length < 4) return false;
  const attack = ((energies[0] ?? 0) + (energies[1] ?? 0)) / 2;
  if (10 * Math.log10(attack / Math.max(...energies)) < slowestAttackDb) return false;
  let lowest = Number.POSITIVE_INFINITY;
  let rise = 1;
  for (let k = 3; k + 2 < energies.length; k++) {
    const mean = ((energies[k] ?? 0) + (energies[k + 1] ?? 0) + (energies[k + 2] ?? 0)) / 3;
    lowest = Math.min(lowest, mean);
    if (k > 6) rise = Math.max(rise, mean / lowest);
  }
  return 10 * Math.log10(rise) <= largestRiseDb;
}
