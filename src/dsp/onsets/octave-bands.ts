// Octave bands of a stream: two cascaded resonators each, so that a low hum cannot hide a high onset.

/** Centres of the bands an octave apart, from the lowest bass note to above the brightest partials, Hz. */
const lowestCentre = 45;
const bandCount = 9;
/** Quality of one resonator; two in a row are about an octave wide. */
const quality = 1;

/** A state below this moves no sum that any sample of 24 bits is in: it is lost in the rounding of a 64-bit number. */
const nothing = 1e-60;
const gone = (state: number): number => (Math.abs(state) < nothing ? 0 : state);

/** Streaming octave band filters; allocates once, then never. */
export class OctaveBands {
  readonly centres: readonly number[];
  readonly #gain: Float64Array;
  readonly #back1: Float64Array;
  readonly #back2: Float64Array;
  readonly #state: Float64Array;

  constructor(sampleRate: number) {
    this.centres = Array.from({ length: bandCount }, (_, k) => lowestCentre * 2 ** k).filter(
      (hz) => hz < 0.4 * sampleRate,
    );
    const count = this.centres.length;
    this.#gain = new Float64Array(count);
    this.#back1 = new Float64Array(count);
    this.#back2 = new Float64Array(count);
    this.#state = new Float64Array(4 * count);
    this.centres.forEach((hz, k) => {
      // Band-pass of unit gain at its centre (bilinear transform of s/Q ÷ (s² + s/Q + 1)).
      const angle = (2 * Math.PI * hz) / sampleRate;
      const alpha = Math.sin(angle) / (2 * quality);
      this.#gain[k] = alpha / (1 + alpha);
      this.#back1[k] = (-2 * Math.cos(angle)) / (1 + alpha);
      this.#back2[k] = (1 - alpha) / (1 + alpha);
    });
  }

  /** Takes the next `count` samples; puts each band's energy in them (sum of squares) into `energies`. */
  take(samples: Float64Array, count: number, energies: Float64Array): void {
    for (let k = 0; k < this.centres.length; k++) energies[k] = this.#takeBand(k, samples, count);
  }

  #takeBand(k: number, samples: Float64Array, count: number): number {
    const gain = this.#gain[k];
    const back1 = this.#back1[k];
    const back2 = this.#back2[k];
    const state = this.#state;
    const at = 4 * k;
    let first = state[at];
    let second = state[at + 1];
    let third = state[at + 2];
    let fourth = state[at + 3];
    let energy = 0;
    // Transposed direct form II, b = (g, 0, −g), twice.
    for (let n = 0; n < count; n++) {
      const driven = gain * samples[n];
      const once = driven + first;
      first = second - back1 * once;
      second = -driven - back2 * once;
      const drivenAgain = gain * once;
      const twice = drivenAgain + third;
      third = fourth - back1 * twice;
      fourth = -drivenAgain - back2 * twice;
      energy += twice * twice;
    }
    // In digital silence the states would fall until they are subnormal numbers, ten times as slow to count with.
    state[at] = gone(first);
    state[at + 1] = gone(second);
    state[at + 2] = gone(third);
    state[at + 3] = gone(fourth);
    return energy;
  }
}
