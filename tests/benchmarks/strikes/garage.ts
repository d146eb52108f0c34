// The same strike in a garage: reverberation, noise, a thin microphone, a note that still rings, another rate.
import FFT from 'fft.js';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { pinkNoise } from '../../sounds/noise';
import { rollOff } from '../../sounds/scene';
import type { Sound } from './hear-take';

const power = (samples: Float32Array, from: number, to: number): number => {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return sum / Math.max(1, to - from);
};

/** Root mean square of the 0.5 s from the loudest sample on. */
export function loudPart(samples: Float32Array, sampleRate: number): number {
  let loudest = 0;
  for (let n = 0; n < samples.length; n++) {
    if (Math.abs(samples[n] ?? 0) > Math.abs(samples[loudest] ?? 0)) loudest = n;
  }
  const end = Math.min(samples.length, loudest + Math.round(0.5 * sampleRate));
  return Math.sqrt(power(samples, loudest, end));
}

/** Peak brought to at most 0.7, as a microphone that is not overdriven has it. */
export function keptBelowFull({ samples, sampleRate }: Sound): Sound {
  let peak = 0;
  for (let n = 0; n < samples.length; n++) peak = Math.max(peak, Math.abs(samples[n] ?? 0));
  const gain = peak > 0.7 ? 0.7 / peak : 1;
  return { samples: samples.map((value) => gain * value), sampleRate };
}

/**
 * Reverberation: exponentially decaying Gaussian noise that falls by 60 dB in `ringSeconds`, scaled so that the
 * direct sound is `directDb` over it.
 */
export function reverberated(
  sound: Sound,
  ringSeconds: number,
  directDb: number,
  seed: number,
): Sound {
  const { samples, sampleRate } = sound;
  const gaussian = gaussianFrom(seededRandom(seed));
  const length = Math.round(ringSeconds * sampleRate);
  const first = Math.round(0.002 * sampleRate);
  const response = new Float32Array(length);
  let energy = 0;
  for (let n = first; n < length; n++) {
    const value = gaussian() * 10 ** ((-3 * n) / length);
    response[n] = value;
    energy += value * value;
  }
  const gain = 10 ** (-directDb / 20) / Math.sqrt(energy);
  for (let n = 0; n < length; n++) response[n] = gain * (response[n] ?? 0);
  response[0] = 1;
  return keptBelowFull({ samples: convolved(samples, response), sampleRate });
}

/** Half a minute of pink noise at each rate: every sound takes its noise from another place of it. */
const pools = new Map<number, Float32Array>();
function pinkPool(sampleRate: number): Float32Array {
  const pool = pools.get(sampleRate) ?? pinkNoise(seededRandom(1), sampleRate, 30);
  pools.set(sampleRate, pool);
  return pool;
}

/** Pink noise `snrDb` below the loudest half second. */
export function noisy({ samples, sampleRate }: Sound, snrDb: number, seed: number): Sound {
  const deviation = loudPart(samples, sampleRate) * 10 ** (-snrDb / 20);
  const noise = pinkPool(sampleRate);
  const first = Math.floor(seededRandom(seed)() * noise.length);
  return keptBelowFull({
    samples: samples.map(
      (value, n) => value + deviation * (noise[(first + n) % noise.length] ?? 0),
    ),
    sampleRate,
  });
}

/** Without its lows, as through a thin microphone: Butterworth of second order. */
export function highPassed({ samples, sampleRate }: Sound, hz: number): Sound {
  const passed = new Float32Array(samples);
  rollOff(passed, sampleRate, hz, 2);
  return { samples: passed, sampleRate };
}

/**
 * With `other` (same rate) still ringing when the strike comes at `onset` s, `levelDb` against the strike's own loud
 * part: it is `since` s old then. Before the onset it runs backwards, so that it rises slowly and is no strike itself.
 */
export function withOtherRinging(
  { samples, sampleRate }: Sound,
  other: Sound,
  onset: number,
  levelDb: number,
  since = 0.15,
): Sound {
  const at = (seconds: number): number => Math.round(seconds * sampleRate);
  const there = Math.sqrt(power(other.samples, at(since), at(since + 0.1)));
  const gain = (loudPart(samples, sampleRate) * 10 ** (levelDb / 20)) / Math.max(there, 1e-9);
  const mixed = samples.map(
    (value, n) => value + gain * (other.samples[at(since) + Math.abs(n - at(onset))] ?? 0),
  );
  return keptBelowFull({ samples: mixed, sampleRate });
}

/** Half a windowed sinc, from its top: `steps` values for each zero of it. */
const steps = 256;
const zeros = 16;
const kernel = Float64Array.from({ length: steps * zeros + 2 }, (_, n) => {
  const x = n / steps;
  const sinc = n === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  return x >= zeros ? 0 : sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / zeros));
});

/** At `factor` times its pitch and speed (Hann-windowed sinc interpolation). */
export function resampled({ samples, sampleRate }: Sound, factor: number): Sound {
  const cut = Math.min(1, 1 / factor);
  const out = new Float32Array(Math.floor(samples.length / factor));
  const reach = zeros / cut;
  for (let n = 0; n < out.length; n++) {
    const place = n * factor;
    const from = Math.max(0, Math.ceil(place - reach));
    const to = Math.min(samples.length - 1, Math.floor(place + reach));
    let sum = 0;
    for (let k = from; k <= to; k++) {
      const at = Math.abs(k - place) * cut * steps;
      const below = Math.floor(at);
      const low = kernel[below] ?? 0;
      sum += (samples[k] ?? 0) * (low + (at - below) * ((kernel[below + 1] ?? 0) - low));
    }
    out[n] = cut * sum;
  }
  return { samples: out, sampleRate };
}

/** `samples` through a filter with the impulse response `response`, as long as they were. */
function convolved(samples: Float32Array, response: Float32Array): Float32Array<ArrayBuffer> {
  const size = 2 ** Math.ceil(Math.log2(samples.length + response.length));
  const transform = new FFT(size);
  const spectrumOf = (part: Float32Array): number[] => {
    const padded = new Array<number>(2 * size).fill(0);
    for (let n = 0; n < part.length; n++) padded[2 * n] = part[n] ?? 0;
    const spectrum = transform.createComplexArray();
    transform.transform(spectrum, padded);
    return spectrum;
  };
  const [a, b] = [spectrumOf(samples), spectrumOf(response)];
  for (let k = 0; k < size; k++) {
    const [re, im, otherRe, otherIm] = [
      a[2 * k] ?? 0,
      a[2 * k + 1] ?? 0,
      b[2 * k] ?? 0,
      b[2 * k + 1] ?? 0,
    ];
    a[2 * k] = re * otherRe - im * otherIm;
    a[2 * k + 1] = re * otherIm + im * otherRe;
  }
  const output = transform.createComplexArray();
  transform.inverseTransform(output, a);
  return Float32Array.from(samples, (_, n) => output[2 * n] ?? 0);
}
