// Noise that comes and goes with a strike and that no line explains: a buzz.
// Limits are chosen, no source; seeded pans with planted buzzes test them.
import { dbOfPower, powerOfDb } from '../../domain/numbers/decibel-levels';
import { RealFourier } from '../numbers/fourier';
import { upperMedian } from '../numbers/nth-smallest';

/** A sound at a rate that keeps all up to `highestHz`; the onset is at `onset`. */
export interface BuzzSound {
  readonly samples: Float64Array;
  readonly count: number;
  readonly onset: number;
  readonly rate: number;
}

/** Noise is looked for between these frequencies: over most of what a note sounds with, Hz. */
const lowestHz = 1000;
const highestHz = 6500;
/** Length of a frame, samples: about 0.09 s, short against a note and long against the turns of a line. */
const frame = 2048;
/** By this time the stick's own noise is gone, s. */
const from = 0.03;
/** Frames from then on, half a frame apart. */
const frames = 5;
/** Before the onset and before the end of the sound, s. */
const margin = 0.006;
/** What a line takes up to either side: its lobe and its exchange, Hz, and its glide, as a part of its frequency. */
const lineHz = 50;
const linePart = 0.012;
/** Lines must leave this part of the range free. */
const leastFree = 0.2;
/** Number of bins in a block (about 280 Hz): a buzz is broad, a line is not … */
const blockBins = 24;
/** … and exceeds its block's median by this factor. In noise alone 6 % of the power does. */
const standsOut = 4;
/** What is kept of noise: 1 − exp(−standsOut · ln 2), its powers being exponentially distributed. */
const keptOfNoise = 1 - 2 ** -standsOut;
/** Anything less is no buzz, dB. */
const leastDb = -60;

/** Measures buzzes; its arrays are made once. */
export class StrikeBuzz {
  readonly #fourier = new RealFourier(frame);
  readonly #samples = new Float64Array(frame);
  readonly #window = Float64Array.from(
    { length: frame },
    (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / frame),
  );
  /** 1 for bins that belong to no line. */
  readonly #isFree = new Uint8Array(frame / 2);
  readonly #block = new Float64Array(blockBins);
  /** From powers of the bins to the mean square. */
  #scale = 0;

  /**
   * Power between 1 and 6.5 kHz beside `lines` in the first 0.3 s of a strike, less what there was before it or is at
   * its end (whichever is more: what does not fall with the strike is not its own), against the power of the strike
   * in the same time, dB. Null where the sound is too short.
   */
  measure(sound: BuzzSound, lines: readonly { readonly hz: number }[]): number | null {
    const { samples, count, onset, rate } = sound;
    const last = count - frame - Math.round(margin * rate);
    const first = onset + Math.round(from * rate);
    if (first > last) return null;
    if (!this.#clear(lines, rate)) return null;
    const before = onset - frame - Math.round(margin * rate);
    const room = before >= 0 ? this.#powerAt(samples, before) : 0;
    let power = 0;
    let taken = 0;
    let end = first;
    for (let start = first; taken < frames && start <= last; start += frame / 2) {
      power += this.#powerAt(samples, start);
      taken++;
      end = start + frame;
    }
    // The end of a short sound is still its beginning.
    const late = last >= end ? this.#powerAt(samples, last) : 0;
    let whole = 0;
    for (let n = first; n < end; n++) whole += samples[n] ** 2;
    const excess = power / taken - Math.max(room, late);
    const part = excess / Math.max(whole / (end - first), 1e-20);
    return dbOfPower(part, powerOfDb(leastDb));
  }

  /** Finds the bins beside `lines`; false if hardly any are left. */
  #clear(lines: readonly { readonly hz: number }[], rate: number): boolean {
    const binHz = rate / frame;
    const isFree = this.#isFree.fill(0);
    const low = Math.ceil(lowestHz / binHz);
    const high = Math.min(isFree.length - 1, Math.floor(highestHz / binHz));
    isFree.fill(1, low, high + 1);
    for (const { hz } of lines) {
      const away = lineHz + linePart * hz;
      const start = Math.max(low, Math.floor((hz - away) / binHz));
      isFree.fill(0, start, Math.max(start, Math.ceil((hz + away) / binHz) + 1));
    }
    let free = 0;
    for (let k = low; k <= high; k++) free += isFree[k];
    const all = high + 1 - low;
    // Hann: the mean square of the window is 3/8; each bin has its mirror image.
    this.#scale = (2 * all) / Math.max(1, free) / ((3 / 8) * frame * frame * keptOfNoise);
    return free > leastFree * all;
  }

  /** Mean square of the noise in the frame at `start`, as if it went on where the lines are. */
  #powerAt(samples: Float64Array, start: number): number {
    const window = this.#window;
    const framed = this.#samples;
    for (let n = 0; n < frame; n++) framed[n] = window[n] * samples[start + n];
    this.#fourier.transform(framed);
    const { spectrum } = this.#fourier;
    const isFree = this.#isFree;
    const block = this.#block;
    let sum = 0;
    let count = 0;
    for (let k = 0; k < isFree.length; k++) {
      if (isFree[k] === 0) continue;
      block[count++] = spectrum[2 * k] ** 2 + spectrum[2 * k + 1] ** 2;
      if (count < block.length) continue;
      sum += broadSum(block, count);
      count = 0;
    }
    if (count > 0) sum += broadSum(block, count);
    return this.#scale * sum;
  }
}

/** Sum of the first `count` powers, each cut off where it stands so far over the others that it must be a line. */
function broadSum(powers: Float64Array, count: number): number {
  const most = standsOut * upperMedian(powers, count);
  let sum = 0;
  for (let k = 0; k < count; k++) sum += Math.min(most, powers[k]);
  return sum;
}
