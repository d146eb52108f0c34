// The noise between the lines of a spectrum, and which peaks are no lines of their own.
import { amplitudeOfDb } from '../../domain/numbers/decibel-levels';
import { upperMedian } from '../numbers/nth-smallest';

/** How many main lobes away sidelobes are still looked for (chosen, no source). */
const furthestLobes = 6;

/** Noise and sidelobes of magnitude spectra; all work arrays are made once. */
export class NoiseFloor {
  readonly #ends: number[] = [];
  readonly #levels: number[] = [];
  readonly #sample = new Float64Array(2048);
  /** Level of sidelobes against their line, by distance in bins. */
  readonly #sidelobes: number[] = [];
  #lobe = 0;

  /**
   * Median magnitude of each block of bins up to `highBin`; blocks are wide against a line and grow with frequency.
   * `lobe`: half the width of a line, bins.
   */
  measure(magnitude: Float64Array, lobe: number, highBin: number): void {
    this.#ends.length = 0;
    this.#levels.length = 0;
    const step = Math.max(1, Math.round(lobe / 3));
    const sample = this.#sample;
    for (let start = 2; start < highBin; ) {
      const end = Math.min(highBin + 1, start + Math.max(16 * lobe, Math.round(0.15 * start)));
      let count = 0;
      for (let k = start; k < end && count < sample.length; k += step) {
        sample[count++] = magnitude[k];
      }
      this.#ends.push(end);
      this.#levels.push(upperMedian(sample, count));
      start = end;
    }
    this.#expectSidelobes(lobe);
  }

  /** Noise around `bin`. */
  at(bin: number): number {
    const block = this.#ends.findIndex((end) => bin < end);
    return this.#levels[block];
  }

  /** Whether a peak at `bin` can be the sidelobe of a stronger line in the spectrum last measured. */
  isSidelobe(magnitude: Float64Array, bin: number): boolean {
    const here = magnitude[bin];
    const reach = furthestLobes * this.#lobe;
    const last = Math.min(magnitude.length - 1, bin + reach);
    for (let k = Math.max(0, bin - reach); k <= last; k++) {
      if (magnitude[k] * this.#sidelobes[Math.abs(k - bin)] > here) return true;
    }
    return false;
  }

  /** Hann sidelobes fall by 18 dB an octave from −31 dB. */
  #expectSidelobes(lobe: number): void {
    if (lobe === this.#lobe) return;
    this.#lobe = lobe;
    this.#sidelobes.length = 0;
    for (let away = 0; away <= furthestLobes * lobe; away++) {
      const level = amplitudeOfDb(-(29 + 18 * Math.log2(away / lobe)));
      this.#sidelobes.push(away > lobe ? level : 0);
    }
  }
}
