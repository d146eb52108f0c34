// What the phase of a settling line may do: turn steadily, glide, and swing with the energy exchange.
// The expected values below are chosen, no source; seeded scenes test what comes of them.
import type { WorkArrays } from '../numbers/work-arrays';

/**
 * What is expected before looking, each as one standard deviation: size, time constant and its spread (log) of a glide.
 */
const expectedGlideCents = 25;
const expectedGlideSeconds = 0.045;
const expectedGlideSpread = 0.45;
/** Swing of the frequency that follows the envelope, and swing that does not show in the envelope, cents. */
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
 * θ(t) = φ + ωt − G·τ·exp(−t/τ) + κ·h(t) + Σₖ (cₖ·cos νₖt + sₖ·sin νₖt)/νₖ, each but φ and ω with a normal prior.
 *
 * Its slope is the frequency: ω (rad/s) once settled, G·exp(−t/τ) more while it glides (G rad/s at the strike, τ s),
 * κ·h′(t) more where it swings with the envelope (h′: the envelope's departure from a straight decay, scaled to 1), and
 * waves at νₖ = 2π · 3.5, 6 and 10 Hz that do not show in the envelope. Our own model of a struck note; the priors stand
 * above.
 */
export class PhaseModel {
  readonly size = slow + 2 * slowHz.length;
  readonly expected: Float64Array;
  readonly precision: Float64Array;
  /** The angle's derivative by each parameter over the window; those of the glide are filled by `bend`. */
  readonly slopes: readonly Float64Array[];
  /** Time integral of the swing that follows the envelope, s; filled from outside. */
  readonly swing: Float64Array;

  /** `after`: time of the first sample after the strike, s; `hz`: the line's rough frequency. */
  constructor(
    readonly count: number,
    readonly rate: number,
    readonly after: number,
    hz: number,
    work: WorkArrays,
  ) {
    this.swing = work.zeros(count);
    this.slopes = Array.from({ length: this.size }, (_, i) =>
      i === swing ? this.swing : work.take(count),
    );
    this.slopes[phi].fill(1, 0, count);
    const byOmega = this.slopes[omega];
    for (let n = 0; n < count; n++) byOmega[n] = n / rate;
    slowHz.forEach((hertz, k) => {
      fillWave(this.slopes[slow + 2 * k], this.slopes[slow + 2 * k + 1], count, rate, hertz);
    });
    this.expected = work.zeros(this.size);
    this.expected[logTau] = Math.log(expectedGlideSeconds);
    const radians = 2 * Math.PI * hz * turnsPerCent;
    this.precision = work.take(this.size);
    this.precision.fill(1 / (radians * expectedSlowCents) ** 2, 0, this.size);
    this.precision[phi] = 0;
    this.precision[omega] = 0;
    this.precision[glide] = 1 / (radians * expectedGlideCents) ** 2;
    this.precision[logTau] = 1 / expectedGlideSpread ** 2;
    this.precision[swing] = 1 / (radians * expectedSwingCents) ** 2;
  }

  /** Fills `start`: a glide of time constant `tau` (s) whose phase at the first sample is `radians`. */
  startAt(tau: number, radians: number, start: Float64Array): void {
    start.fill(0, 0, this.size);
    const limit = 3 / Math.sqrt(this.precision[glide]);
    const asked = -radians / (tau * Math.exp(-this.after / tau));
    start[glide] = Math.max(-limit, Math.min(limit, asked));
    start[logTau] = Math.log(tau);
  }

  /** Fills `angles` (radians against the rough line's steady turn). */
  fillAngles(parameters: Float64Array, angles: Float64Array): void {
    const { count, rate } = this;
    const tau = Math.exp(parameters[logTau]);
    const kappa = parameters[swing];
    const start = parameters[phi];
    const turn = parameters[omega] / rate;
    const fade = Math.exp(-1 / (rate * tau));
    let reach = parameters[glide] * tau * Math.exp(-this.after / tau);
    for (let n = 0; n < count; n++) {
      angles[n] = start + turn * n - reach + kappa * this.swing[n];
      reach *= fade;
    }
    for (let k = slow; k < this.size; k++) {
      const weight = parameters[k];
      const wave = this.slopes[k];
      for (let n = 0; n < count; n++) angles[n] = angles[n] + weight * wave[n];
    }
  }

  /** Fills the slopes by the glide's size and time constant. */
  bend(parameters: Float64Array): void {
    const byGlide = this.slopes[glide];
    const byTau = this.slopes[logTau];
    const tau = Math.exp(parameters[logTau]);
    const g = parameters[glide];
    const fade = Math.exp(-1 / (this.rate * tau));
    let fading = Math.exp(-this.after / tau);
    for (let n = 0; n < this.count; n++) {
      byGlide[n] = -tau * fading;
      byTau[n] = -g * (tau + this.after + n / this.rate) * fading;
      fading *= fade;
    }
  }

  /** Mean of the glide's course exp(−t/τ) from sample `first` on, weighed by the squares of `envelope`. */
  glideShare(parameters: Float64Array, envelope: Float64Array, first: number): number {
    const tau = Math.exp(parameters[logTau]);
    const fade = Math.exp(-1 / (this.rate * tau));
    let fading = Math.exp(-(this.after + first / this.rate) / tau);
    let [sum, weights] = [0, 1e-300];
    for (let n = first; n < this.count; n++) {
      const weight = envelope[n] ** 2;
      sum += weight * fading;
      weights += weight;
      fading *= fade;
    }
    return sum / weights;
  }

  /** −2·log of the prior, up to a constant. */
  priorCost(parameters: Float64Array): number {
    let cost = 0;
    for (let i = 0; i < this.size; i++) {
      cost += this.precision[i] * (parameters[i] - this.expected[i]) ** 2;
    }
    return cost;
  }
}

/** Cosine and sine of one rate, divided by its turn a second. */
function fillWave(
  cosine: Float64Array,
  sine: Float64Array,
  count: number,
  rate: number,
  hertz: number,
): void {
  const turn = 2 * Math.PI * hertz;
  const stepCos = Math.cos(turn / rate);
  const stepSin = Math.sin(turn / rate);
  let cos = 1 / turn;
  let sin = 0;
  for (let n = 0; n < count; n++) {
    cosine[n] = cos;
    sine[n] = sin;
    const next = cos * stepCos - sin * stepSin;
    sin = cos * stepSin + sin * stepCos;
    cos = next;
  }
}
