// Tells sound that comes back after a hole (samples the phone lost) from a new strike.
// Limits are chosen, no source, but for the length of a device buffer (10 ms on most phones).
import { lostRun } from './sound-faults';

/** A rise this soon after a hole may be nothing but the hole's end, s. */
const holeShadow = 0.03;
/** Longer runs of exact zeros are digital silence, not a lost device buffer or a few, s. */
const longestHole = 0.1;
/** This many exact zeros in a row are the beginning of a hole; its edge is a click. */
const beginningHole = 8;
/** Sound this many times louder than before the hole is a new strike. */
const louderThanReturning = 3;
/** The remembered peak falls to 1/e in this time, s. */
const peakSeconds = 0.02;

/** Follows a stream; allocation-free. */
export class HoleWatch {
  readonly #peakDecay: number;
  #received = 0;
  #zeros = 0;
  #holeEnd = Number.NEGATIVE_INFINITY;
  #peak = 0;
  #peakBefore = 0;

  constructor(readonly sampleRate: number) {
    this.#peakDecay = Math.exp(-1 / (peakSeconds * sampleRate));
  }

  /** Takes `samples[from…from + count)`. */
  take(samples: Float32Array, from: number, count: number): void {
    const decay = this.#peakDecay;
    let peak = this.#peak;
    let zeros = this.#zeros;
    for (let n = 0; n < count; n++) {
      const size = Math.abs(samples[from + n]);
      if (size === 0) {
        zeros++;
        continue;
      }
      if (zeros >= lostRun && zeros < longestHole * this.sampleRate) {
        this.#holeEnd = this.#received + n + 1;
        this.#peakBefore = peak;
        peak = 0;
      }
      zeros = 0;
      peak *= decay;
      if (size > peak) peak = size;
    }
    this.#received += count;
    this.#peak = peak;
    this.#zeros = zeros;
  }

  /** Whether a rise right now is only the edge of a hole, or the sound coming back after it, no louder than it went. */
  isAtHole(): boolean {
    if (this.#zeros >= beginningHole) return true;
    const isNear = this.#received - this.#holeEnd < holeShadow * this.sampleRate;
    return isNear && this.#peak < louderThanReturning * this.#peakBefore;
  }
}
