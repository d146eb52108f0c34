// Finds the moments at which something was struck: fast rises over a floor that follows the room.

/** Length of one level step, s. */
const stepSeconds = 0.004;
/** A rise is looked for over this time, s. */
const riseSeconds = 0.024;
/** Needed rise over the level just before and over the room, dB. */
const riseDb = 9;
const overRoomDb = 12;
/** A note struck again while it rings jumps by this much over all of the last 24 ms; blooming and beating do not. */
const jumpDb = 4;
/** Quietest onset worth a look, dB of the differenced signal. */
const quietestDb = -78;
/** The floor may rise by this much a second, dB. */
const floorRiseDbPerSecond = 6;

export interface Onset {
  /** Sample at which the rise began, counted from the first sample ever pushed. */
  readonly sample: number;
  /** Rise over the level before, dB. */
  readonly riseDb: number;
  /** Level after the rise, dB (differenced signal). */
  readonly levelDb: number;
}

/** Streaming onset detector; feed it samples one by one, allocation-free. */
export class OnsetDetector {
  readonly #step: number;
  readonly #history: Float64Array;
  #filled = 0;
  #energy = 0;
  #previous = 0;
  #steps = 0;
  #floorDb = -90;
  #armedAfter = 0;
  #peakDb = -200;

  constructor(readonly sampleRate: number) {
    this.#step = Math.max(8, Math.round(stepSeconds * sampleRate));
    this.#history = new Float64Array(Math.round(riseSeconds / stepSeconds) + 1).fill(-200);
  }

  /** Takes one sample; returns an onset at the end of the step in which it is certain, else null. */
  push(sample: number): Onset | null {
    const difference = sample - this.#previous;
    this.#previous = sample;
    this.#energy += difference * difference;
    this.#filled++;
    if (this.#filled < this.#step) return null;
    const levelDb = 10 * Math.log10(this.#energy / this.#filled + 1e-20);
    this.#energy = 0;
    this.#filled = 0;
    this.#steps++;
    return this.#judge(levelDb);
  }

  #judge(levelDb: number): Onset | null {
    const history = this.#history;
    let before = Number.POSITIVE_INFINITY;
    let loudest = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < history.length; k++) {
      before = Math.min(before, history[k] ?? 0);
      loudest = Math.max(loudest, history[k] ?? 0);
    }
    history.copyWithin(0, 1);
    history[history.length - 1] = levelDb;
    this.#floorDb = Math.min(
      Math.max(levelDb, -100),
      this.#floorDb + floorRiseDbPerSecond * stepSeconds,
    );
    const rise = levelDb - Math.max(before, -100);
    // After an onset the detector waits until the attack is over; only a much louder one counts before that.
    const armed = this.#steps > this.#armedAfter || levelDb > this.#peakDb + 10;
    const loudEnough = levelDb > quietestDb && levelDb > this.#floorDb + overRoomDb;
    const struckAgain = levelDb - loudest > jumpDb;
    if (!armed || !loudEnough || (rise < riseDb && !struckAgain)) {
      this.#peakDb = Math.max(this.#peakDb - 0.4, levelDb);
      return null;
    }
    this.#armedAfter = this.#steps + Math.round(0.13 / stepSeconds);
    this.#peakDb = levelDb;
    history.fill(levelDb);
    return { sample: (this.#steps - 1) * this.#step, riseDb: rise, levelDb };
  }
}
