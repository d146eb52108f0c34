// A spectrum that is kept together with its lines, so that the level at any place can be looked up.
import type { SpectralLine } from './strike-spectrum';

export class SpectralLook {
  readonly #magnitude: Float64Array;
  /** Strongest first. */
  lines: readonly SpectralLine[] = [];
  /** Amplitude of the strongest line, linear; never 0. */
  loudest = 1e-9;

  /** For spectra of `bins` values, `binHz` apart. */
  constructor(
    bins: number,
    readonly binHz: number,
  ) {
    this.#magnitude = new Float64Array(bins);
  }

  /** Takes a copy of `magnitude` and keeps `lines`. */
  take(magnitude: Float64Array, lines: readonly SpectralLine[]): void {
    const kept = this.#magnitude;
    for (let k = 0; k < kept.length; k++) kept[k] = magnitude[k];
    this.lines = lines;
    this.loudest = Math.max(lines[0]?.amplitude ?? 0, 1e-9);
  }

  /** Largest amplitude within `reach` cents of `hz`, linear. */
  near(hz: number, reach: number): number {
    const part = 2 ** (reach / 1200);
    const first = Math.max(1, Math.floor(hz / part / this.binHz));
    const last = Math.min(this.#magnitude.length - 1, Math.ceil((hz * part) / this.binHz));
    let largest = 0;
    for (let k = first; k <= last; k++) largest = Math.max(largest, this.#magnitude[k]);
    return largest;
  }

  /** Sum of all amplitudes squared between two frequencies, in bins. */
  energy(fromHz: number, toHz: number): number {
    const first = Math.max(1, Math.floor(fromHz / this.binHz));
    const last = Math.min(this.#magnitude.length - 1, Math.ceil(toHz / this.binHz));
    let sum = 0;
    for (let k = first; k <= last; k++) sum += this.#magnitude[k] ** 2;
    return sum;
  }
}
