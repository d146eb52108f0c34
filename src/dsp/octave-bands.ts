// Octave bands of a stream: two cascaded resonators each, so that a low hum cannot hide a high onset.

/** Centres of the bands an octave apart, from the lowest bass note to above the brightest partials, Hz. */
const lowestCentre = 45;
const bandCount = 9;
/** Quality of one resonator; two in a row are about an octave wide. */
const quality = 1;

/** Streaming octave band filters; allocates once, then never. */
export class OctaveBands {
  readonly centres: readonly number[];
  /** The newest sample of every band, linear. */
  readonly output: Float64Array;
  readonly #gain: Float64Array;
  readonly #back1: Float64Array;
  readonly #back2: Float64Array;
  readonly #state: Float64Array;

  constructor(sampleRate: number) {
    this.centres = Array.from({ length: bandCount }, (_, k) => lowestCentre * 2 ** k).filter(
      (hz) => hz < 0.4 * sampleRate,
    );
    const count = this.centres.length;
    this.output = new Float64Array(count);
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

  /** Takes one sample; `output` then holds the bands. */
  push(sample: number): void {
    const state = this.#state;
    for (let k = 0; k < this.output.length; k++) {
      const gain = this.#gain[k] ?? 0;
      const back1 = this.#back1[k] ?? 0;
      const back2 = this.#back2[k] ?? 0;
      const at = 4 * k;
      // Transposed direct form II, b = (g, 0, −g), twice.
      const once = gain * sample + (state[at] ?? 0);
      state[at] = (state[at + 1] ?? 0) - back1 * once;
      state[at + 1] = -gain * sample - back2 * once;
      const twice = gain * once + (state[at + 2] ?? 0);
      state[at + 2] = (state[at + 3] ?? 0) - back1 * twice;
      state[at + 3] = -gain * once - back2 * twice;
      this.output[k] = twice;
    }
  }
}
