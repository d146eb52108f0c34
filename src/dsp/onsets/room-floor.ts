// The noise floor of a room, band by band: it creeps up and falls faster, so that strikes hardly lift it.
// Limits are chosen, no source.

/** The floor may rise and fall by this much a second, dB: it settles where a fifth of the levels lie below. */
const risePerSecond = 6;
const fallPerSecond = 24;
/** Up to this time the floor takes whatever is quietest, s. */
const settlingSeconds = 0.1;
/** No room and no microphone is quieter, dB. */
const quietest = -110;

/** Floors of some bands; levels in dB, one per step and band. */
export class RoomFloor {
  readonly #floors: Float64Array;
  readonly #taken: Uint32Array;
  readonly #settlingSteps: number;

  constructor(
    bands: number,
    readonly stepSeconds: number,
  ) {
    this.#floors = new Float64Array(bands);
    this.#taken = new Uint32Array(bands);
    this.#settlingSteps = Math.round(settlingSeconds / stepSeconds);
  }

  levelDb(band: number): number {
    return this.#taken[band] === 0 ? quietest : this.#floors[band];
  }

  /** Takes the newest level of a band. */
  follow(band: number, levelDb: number): void {
    const level = Math.max(levelDb, quietest);
    const floor = this.#floors[band];
    const taken = this.#taken[band];
    if (taken === 0) {
      this.#floors[band] = level;
    } else if (taken < this.#settlingSteps) {
      this.#floors[band] = Math.min(floor, level);
    } else if (level > floor) {
      this.#floors[band] = Math.min(level, floor + risePerSecond * this.stepSeconds);
    } else {
      this.#floors[band] = Math.max(level, floor - fallPerSecond * this.stepSeconds);
    }
    if (taken <= this.#settlingSteps) this.#taken[band] = taken + 1;
  }
}
