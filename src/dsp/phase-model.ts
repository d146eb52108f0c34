// What the phase of a settling line may do: turn steadily, glide, and swing with the energy exchange.

/** Expected before looking, one standard deviation: size and time constant of a glide. */
const expectedGlideCents = 25;
const expectedGlideSeconds = 0.045;
const expectedGlideSpread = 0.45;
/** Swing of the frequency that follows the envelope, and swing that does not show in it, cents. */
const expectedSwingCents = 0.2;
const expectedSlowCents = 0.08;
/** The hidden swing is put together from these rates, Hz (energy goes to and fro at 3 to 15 Hz). */
const slowHz = [3.5, 6, 10];

const turnsPerCent = Math.LN2 / 1200;
const [phi, omega, glide, logTau, swing, slow] = [0, 1, 2, 3, 4, 5] as const;

/** Index of the settled angular frequency (rad/s, against the rough one) and of the glide (rad/s at the strike). */
export const settledIndex = omega;
export const glideIndex = glide;

/**
 * Phase of one line over a window, linear in all parameters but the glide's time constant:
 * φ + ωt − G·τ·exp(−t/τ) + κ·h(t) + Σ slow cosines, each but φ and ω with a normal prior.
 */
export class PhaseModel {
  readonly size = slow + 2 * slowHz.length;
  readonly expected: Float64Array;
  readonly precision: Float64Array;
  /** Time integral of the swing that follows the envelope, s; filled from outside. */
  readonly swing: Float64Array;
  readonly #slow: readonly Float64Array[];

  /** `after`: time of the first sample after the strike, s; `hz`: the line's rough frequency. */
  constructor(
    readonly count: number,
    readonly rate: number,
    readonly after: number,
    hz: number,
  ) {
    this.swing = new Float64Array(count);
    this.expected = new Float64Array(this.size);
    this.expected[logTau] = Math.log(expectedGlideSeconds);
    const radians = 2 * Math.PI * hz * turnsPerCent;
    this.precision = new Float64Array(this.size).fill(1 / (radians * expectedSlowCents) ** 2);
    this.precision[phi] = 0;
    this.precision[omega] = 0;
    this.precision[glide] = 1 / (radians * expectedGlideCents) ** 2;
    this.precision[logTau] = 1 / expectedGlideSpread ** 2;
    this.precision[swing] = 1 / (radians * expectedSwingCents) ** 2;
    this.#slow = slowHz.flatMap((hertz) => {
      const turn = 2 * Math.PI * hertz;
      return [Math.cos, Math.sin].map((wave) =>
        Float64Array.from({ length: count }, (_, n) => wave((turn * n) / rate) / turn),
      );
    });
  }

  /** A starting point with a glide of time constant `tau` (s) whose phase at the first sample is `radians`. */
  startAt(tau: number, radians: number): Float64Array {
    const start = new Float64Array(this.size);
    const limit = 3 / Math.sqrt(this.precision[glide] ?? 1);
    const asked = -radians / (tau * Math.exp(-this.after / tau));
    start[glide] = Math.max(-limit, Math.min(limit, asked));
    start[logTau] = Math.log(tau);
    return start;
  }

  /** Fills `angles` (radians against the rough line's steady turn). */
  fillAngles(parameters: Float64Array, angles: Float64Array): void {
    const tau = Math.exp(parameters[logTau] ?? 0);
    const reach = (parameters[glide] ?? 0) * tau;
    const kappa = parameters[swing] ?? 0;
    const [start, turn] = [parameters[phi] ?? 0, parameters[omega] ?? 0];
    const fade = Math.exp(-1 / (this.rate * tau));
    let fading = Math.exp(-this.after / tau);
    for (let n = 0; n < this.count; n++) {
      angles[n] = start + (turn * n) / this.rate - reach * fading + kappa * (this.swing[n] ?? 0);
      fading *= fade;
    }
    this.#slow.forEach((wave, k) => {
      const weight = parameters[slow + k] ?? 0;
      for (let n = 0; n < this.count; n++) angles[n] = (angles[n] ?? 0) + weight * (wave[n] ?? 0);
    });
  }

  /** Fills `slopes` (count × size, row-major): the angle's derivative by each parameter. */
  fillSlopes(parameters: Float64Array, slopes: Float64Array): void {
    const tau = Math.exp(parameters[logTau] ?? 0);
    const g = parameters[glide] ?? 0;
    const fade = Math.exp(-1 / (this.rate * tau));
    let fading = Math.exp(-this.after / tau);
    for (let n = 0; n < this.count; n++) {
      const row = n * this.size;
      const t = n / this.rate;
      slopes[row + phi] = 1;
      slopes[row + omega] = t;
      slopes[row + glide] = -tau * fading;
      slopes[row + logTau] = -g * (tau + this.after + t) * fading;
      slopes[row + swing] = this.swing[n] ?? 0;
      for (let k = 0; k < this.#slow.length; k++) slopes[row + slow + k] = this.#slow[k]?.[n] ?? 0;
      fading *= fade;
    }
  }

  /** −2·log of the prior, up to a constant. */
  priorCost(parameters: Float64Array): number {
    let cost = 0;
    for (let i = 0; i < this.size; i++) {
      cost += (this.precision[i] ?? 0) * ((parameters[i] ?? 0) - (this.expected[i] ?? 0)) ** 2;
    }
    return cost;
  }
}
