// Whether sound arrives as fast as its sample rate says.
import type { Heartbeat } from '../domain/measurement/sound-block';

/** Judged over this long, so that the jitter of single blocks does not count, ms (chosen, no source). */
const windowLength = 10_000;
/**
 * 44.1 kHz taken for 48 kHz is 8 % (147 cents); a starved machine may lose a few percent of its blocks (chosen between
 * the two).
 */
const tolerance = 0.06;
/** A pause between blocks longer than this tells nothing about speed, ms: counting begins again (chosen, no source). */
const longestPause = 200;

/** Counts samples against the clock of the audio thread. */
export class SampleClock {
  #from: number | null = null;
  #last = 0;
  #samples = 0;

  constructor(readonly sampleRate: number) {}

  /** Takes the next block; true if the last 10 s came at another speed than the sample rate, so that every reading would be wrong. */
  isWrongAfter({ at, frames }: Heartbeat): boolean {
    const paused = this.#from === null || at - this.#last > longestPause || at < this.#last;
    this.#last = at;
    if (paused || this.#from === null) {
      this.#begin(at);
      return false;
    }
    this.#samples += frames;
    const elapsed = at - this.#from;
    if (elapsed < windowLength) return false;
    const speed = (1000 * this.#samples) / elapsed / this.sampleRate;
    this.#begin(at);
    return Math.abs(speed - 1) > tolerance;
  }

  #begin(at: number): void {
    this.#from = at;
    this.#samples = 0;
  }
}
