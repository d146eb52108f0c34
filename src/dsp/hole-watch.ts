// Tells sound that comes back after a hole (samples the phone lost) from a new strike.
import { lostRun } from './sound-faults';

/** Rises this soon after a hole in the sound may be its end, s. */
const holeShadow = 0.03;
/** Longer runs of exact zeros are digital silence, not a lost device buffer or a few, s. */
const longestHole = 0.1;
/** That many exact zeros in a row are the beginning of a hole; its edge is a click. */
const beginningHole = 8;
/** Sound this many times louder than before the hole is a new strike. */
const louderThanReturning = 3;
/** The peak that is compared falls to 1/e in this time, s. */
const peakSeconds = 0.02;

/** Follows a stream sample by sample; allocation-free. */
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

  push(sample: number): void {
    this.#received++;
    if (sample === 0) {
      this.#zeros++;
      return;
    }
    if (this.#zeros >= lostRun && this.#zeros < longestHole * this.sampleRate) {
      this.#holeEnd = this.#received;
      this.#peakBefore = this.#peak;
      this.#peak = 0;
    }
    this.#zeros = 0;
    this.#peak = Math.max(Math.abs(sample), this.#peak * this.#peakDecay);
  }

  /** Whether a rise right now is only the edge of a hole, or the sound coming back after it, no louder than it went. */
  isAtHole(): boolean {
    if (this.#zeros >= beginningHole) return true;
    const isNear = this.#received - this.#holeEnd < holeShadow * this.sampleRate;
    return isNear && this.#peak < louderThanReturning * this.#peakBefore;
  }
}
