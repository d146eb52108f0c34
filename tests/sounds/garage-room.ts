// A sound as it is in a room with bare walls: the direct sound, and an exponentially dying diffuse tail.
import { powerOfTwoAtLeast, RealFourier, SmallInverseFourier } from '../../src/dsp/numbers/fourier';
import { gaussianFrom } from '../../src/practice-pan/seeded-random';

export interface Room {
  /** In which the tail falls by 60 dB, s. */
  readonly ringSeconds: number;
  /** Energy of the direct sound against that of the tail, dB. */
  readonly directDb: number;
}

/** The garage and the hall of the table of targets. */
export const garage: Room = { ringSeconds: 0.4, directDb: 0 };
export const largeGarage: Room = { ringSeconds: 1, directDb: 6 };

/** The tail begins with the first wall, s. */
const firstWall = 0.002;

/** `samples` in `room`, as long as they were. */
export function soundInRoom(
  samples: Float32Array,
  sampleRate: number,
  { ringSeconds, directDb }: Room,
  random: () => number,
): Float32Array<ArrayBuffer> {
  const gaussian = gaussianFrom(random);
  const size = powerOfTwoAtLeast(samples.length + ringSeconds * sampleRate);
  const response = new Float64Array(size);
  const length = Math.round(ringSeconds * sampleRate);
  let energy = 0;
  for (let n = Math.round(firstWall * sampleRate); n < length; n++) {
    const value = gaussian() * 10 ** ((-3 * n) / length);
    response[n] = value;
    energy += value * value;
  }
  const gain = 10 ** (-directDb / 20) / Math.sqrt(energy);
  for (let n = 0; n < length; n++) response[n] = gain * (response[n] ?? 0);
  response[0] = 1;
  return convolved(samples, response);
}

/** Product of the two spectra, turned back; `response` as long as the transform. */
function convolved(samples: Float32Array, response: Float64Array): Float32Array<ArrayBuffer> {
  const size = response.length;
  const forward = new RealFourier(size);
  const padded = new Float64Array(size);
  padded.set(samples);
  forward.transform(padded);
  const sound = Float64Array.from(forward.spectrum);
  forward.transform(response);
  const { spectrum } = forward;
  const backward = new SmallInverseFourier();
  const product = backward.inputFor(size);
  product.fill(0);
  // Only the lower half is filled, and the real part of what comes back doubled: the rest is its mirror.
  for (let k = 0; k < size / 2; k++) {
    const [re, im] = [sound[2 * k] ?? 0, sound[2 * k + 1] ?? 0];
    const [otherRe, otherIm] = [spectrum[2 * k] ?? 0, spectrum[2 * k + 1] ?? 0];
    const half = k === 0 ? 0.5 : 1;
    product[2 * k] = half * (re * otherRe - im * otherIm);
    product[2 * k + 1] = half * (re * otherIm + im * otherRe);
  }
  const output = backward.run(size);
  return Float32Array.from(samples, (_, n) => 2 * (output[2 * n] ?? 0));
}
