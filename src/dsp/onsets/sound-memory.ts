// The newest seconds of sound, so that a strike can be kept as it sounded.
import { type Seconds, seconds } from '../../domain/tuning/units';

/** How far back sound is remembered. */
const remembered = seconds(4);

export class SoundMemory {
  readonly #sampleRate: number;
  readonly #ring: Float32Array;
  /** Samples since listening began. */
  #count = 0;

  /** All memory is allocated here, for a listening at `sampleRate` Hz. */
  constructor(sampleRate: number) {
    this.#sampleRate = sampleRate;
    this.#ring = new Float32Array(Math.ceil(remembered * sampleRate));
  }

  push(samples: Float32Array): void {
    const ring = this.#ring;
    // Sample by sample: a view for `set` would be garbage for every block.
    let slot = this.#count % ring.length;
    for (let n = 0; n < samples.length; n++) {
      ring[slot] = samples[n];
      if (++slot === ring.length) slot = 0;
    }
    this.#count += samples.length;
  }

  /** True once all sound up to `end` (s since listening began) has arrived. */
  has(end: Seconds): boolean {
    return Math.round(end * this.#sampleRate) <= this.#count;
  }

  /** The sound from `from` (s since listening began) on, at most `length` s of it; null if its beginning is forgotten. */
  cut(from: Seconds, length: Seconds): Float32Array<ArrayBuffer> | null {
    const { first, end } = this.#span(from, length);
    if (first < this.#count - this.#ring.length || first >= end) return null;
    const samples = new Float32Array(end - first);
    this.#copy(first, end, samples);
    return samples;
  }

  /** The same into `to`, as far as it reaches, without making an array; how many samples it is, 0 if it is forgotten. */
  cutInto(to: Float32Array, from: Seconds, length: Seconds): number {
    const { first, end } = this.#span(from, length);
    if (first < this.#count - this.#ring.length || first >= end) return 0;
    const last = Math.min(end, first + to.length);
    this.#copy(first, last, to);
    return last - first;
  }

  #span(from: Seconds, length: Seconds): { readonly first: number; readonly end: number } {
    const first = Math.max(0, Math.round(from * this.#sampleRate));
    return { first, end: Math.min(this.#count, first + Math.round(length * this.#sampleRate)) };
  }

  #copy(first: number, end: number, to: Float32Array): void {
    const ring = this.#ring;
    let slot = first % ring.length;
    for (let n = 0; n < end - first; n++) {
      to[n] = ring[slot];
      if (++slot === ring.length) slot = 0;
    }
  }
}
