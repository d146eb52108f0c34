// The smallest standard error any unbiased estimator of a damped sinusoid's frequency can have.

export interface DampedSinusoid {
  readonly hz: number;
  /** Amplitude at the start of the window, linear. */
  readonly amplitude: number;
  /** Time constant, s. */
  readonly decaySeconds: number;
  /** Window, s. */
  readonly seconds: number;
  /** Variance of white noise per sample; for coloured noise its density at `hz` times half the rate. */
  readonly noiseVariance: number;
  readonly sampleRate: number;
}

/**
 * One standard error of the frequency in cents by the Cramér–Rao bound: the inverse Fisher information
 * of (phase, frequency), amplitude and damping decoupling from them (Yao & Pandit, IEEE Trans. Signal
 * Process. 43(4), 878, 1995). With `glideSeconds` the phase also carries an unknown multiple of
 * exp(−t/glideSeconds), which costs certainty.
 */
export function boundCents(line: DampedSinusoid, glideSeconds: number | null = null): number {
  const { hz, amplitude, decaySeconds, seconds, noiseVariance, sampleRate } = line;
  const steps = 2000;
  const step = seconds / steps;
  const size = glideSeconds === null ? 2 : 3;
  const information = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let k = 0; k < steps; k++) {
    const t = (k + 0.5) * step;
    const slopes = [1, t, glideSeconds === null ? 0 : Math.exp(-t / glideSeconds)];
    const weight = Math.exp((-2 * t) / decaySeconds) * step;
    for (let row = 0; row < size; row++) {
      for (let column = 0; column < size; column++) {
        const cells = information[row] as number[];
        cells[column] = (cells[column] ?? 0) + weight * (slopes[row] ?? 0) * (slopes[column] ?? 0);
      }
    }
  }
  const scale = (amplitude * amplitude * sampleRate) / (2 * noiseVariance);
  const turn = Math.sqrt(varianceOfSecond(information) / scale);
  return ((1200 / Math.LN2) * turn) / (2 * Math.PI * hz);
}

/** The second diagonal element of the inverse of a 2 × 2 or 3 × 3 matrix. */
function varianceOfSecond(m: readonly (readonly number[])[]): number {
  const at = (row: number, column: number): number => m[row]?.[column] ?? 0;
  if (m.length === 2) return at(0, 0) / (at(0, 0) * at(1, 1) - at(0, 1) ** 2);
  const minor = at(0, 0) * at(2, 2) - at(0, 2) ** 2;
  const determinant =
    at(0, 0) * (at(1, 1) * at(2, 2) - at(1, 2) ** 2) -
    at(0, 1) * (at(0, 1) * at(2, 2) - at(1, 2) * at(0, 2)) +
    at(0, 2) * (at(0, 1) * at(1, 2) - at(1, 1) * at(0, 2));
  return minor / determinant;
}
