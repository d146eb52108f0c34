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
    const first = Math.max(0, Math.round(from * this.#sampleRate));
    const end = Math.min(this.#count, first + Math.round(length * this.#sampleRate));
    const ring = this.#ring;
    if (first < this.#count - ring.length || first >= end) return null;
    const samples = new Float32Array(end - first);
    const start = first % ring.length;
    const before = Math.min(samples.length, ring.length - start);
    samples.set(ring.subarray(start, start + before), 0);
    samples.set(ring.subarray(0, samples.length - before), before);
    return samples;
  }
}
