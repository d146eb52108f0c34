// Low-passes that are the same forwards and backwards: they move nothing in time.

/** The stop band is this much weaker, dB (chosen: 20 dB more than the tests ask for). */
const stoppedDb = 60;
/** Kaiser's β and the product of half-length (s) and transition (Hz) for it (Kaiser, 1974; Oppenheim & Schafer, ch. 7). */
const beta = 0.1102 * (stoppedDb - 8.7);
export const lengthTimesWidth = (stoppedDb - 7.95) / (2 * 2.285 * 2 * Math.PI);

/** Weights of 2n + 1 samples with the sum 1, n = `halfSeconds` × `rate`; passes up to `passHz` unchanged. */
export function symmetricLowPass(halfSeconds: number, passHz: number, rate: number): Float64Array {
  const half = Math.max(1, Math.round(halfSeconds * rate));
  const cut = passHz + lengthTimesWidth / halfSeconds / 2;
  const weights = new Float64Array(2 * half + 1);
  const full = besselI0(beta);
  let sum = 0;
  for (let n = -half; n <= half; n++) {
    const turn = (2 * Math.PI * cut * n) / rate;
    const sinc = n === 0 ? 1 : Math.sin(turn) / turn;
    const weight = (sinc * besselI0(beta * Math.sqrt(1 - (n / half) ** 2))) / full;
    weights[n + half] = weight;
    sum += weight;
  }
  return weights.map((weight) => weight / sum);
}

/** The modified Bessel function of order 0 by its series. */
function besselI0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > 1e-12 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
