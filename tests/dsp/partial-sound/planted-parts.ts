// A strike whose parts are known one by one, with what the ear says of the whole.
import type { Strike } from '../../../src/domain/measurement/strike';
import { between, seededRandom } from '../../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../../src/practice-pan/struck-note';
import { pinkNoise } from '../../sounds/noise';
import { onlyStrike } from '../listen-to';

export const rate = 48000;
export const struckAt = 0.03;
const before = 0.3;

export interface PlantedStrike {
  readonly strike: Strike;
  /** The sound that is taken apart: the strike lies `struckAt` s after its beginning. */
  readonly sound: Float32Array<ArrayBuffer>;
  readonly partials: readonly StruckPartial[];
  /** Each part alone, and everything but it, over the same stretch. */
  readonly alone: readonly Float32Array<ArrayBuffer>[];
  readonly rest: readonly Float32Array<ArrayBuffer>[];
}

/** `noiseDb`: pink noise so far below the fundamental. */
export function plantedStrike(seed: number, ownHz: number, noiseDb = 60): PlantedStrike {
  const random = seededRandom(seed);
  const partial = (times: number, amplitude: number): StruckPartial => ({
    hz: times * ownHz * 2 ** (between(random, -12, 12) / 1200),
    amplitude,
    decaySeconds: between(random, 2.5, 4.5) / Math.sqrt(times * ownHz),
    bloomSeconds: times === 1 ? 0 : between(random, 0.006, 0.02),
    glideCents: between(random, -10, 25),
    glideSeconds: between(random, 0.03, 0.06),
    phase: between(random, 0, 6),
  });
  const partials = [partial(1, 0.15), partial(2, 0.1), partial(4, 0.04)];
  const ringing: StruckPartial = { ...partial(1, 0.02), hz: ownHz * 2 ** (-500 / 1200) };
  const length = Math.round(1.7 * rate);
  const made = [...partials, ringing].map((each) => {
    const samples = new Float32Array(length);
    addStruckNote(samples, rate, before, { partials: [each], onset: 0.002 }, 1);
    return samples;
  });
  const noise = pinkNoise(random, rate, length / rate);
  const gain = 0.1 * 10 ** (-noiseDb / 20);
  const all = Float32Array.from(
    { length },
    (_, n) => gain * (noise[n] ?? 0) + made.reduce((sum, one) => sum + (one[n] ?? 0), 0),
  );
  const strike = onlyStrike(all, rate);
  const from = Math.round((before - struckAt) * rate);
  const cut = (samples: Float32Array): Float32Array<ArrayBuffer> =>
    samples.slice(from, from + rate);
  const alone = made.slice(0, 3).map(cut);
  const sound = cut(all);
  const rest = alone.map((one) => sound.map((value, n) => value - (one[n] ?? 0)));
  return { strike, sound, partials, alone, rest };
}
