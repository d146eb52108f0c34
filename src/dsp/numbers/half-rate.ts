// Halves the sample rate of a sound, as often as its rate allows: the ear listens to the low frequencies only.

/**
 * Lower rates leave the filter no room between what is kept (all below 6.6 kHz) and what would fold onto it, Hz.
 */
const lowestRate = 40000;
/** The filter's odd taps on either side; with them it departs from 1 and from 0 by less than 10⁻⁵ (−100 dB). */
const taps = 10;
/** Shape of a Kaiser window for 100 dB. */
const kaiserShape = 10.06;

/** How often a rate can be halved. */
export function halvingsOf(sampleRate: number): number {
  let times = 0;
  for (let rate = sampleRate; rate >= lowestRate; rate /= 2) times++;
  return times;
}

/** Modified Bessel function of order 0, by its series. */
function bessel0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/** Half-band low-pass by a Kaiser window: all even taps but the middle one (½) are zero (Oppenheim & Schafer, Discrete-Time Signal Processing, ch. 7.5). */
const weights = Float64Array.from({ length: taps }, (_, k) => {
  const at = 2 * k + 1;
  const window =
    bessel0(kaiserShape * Math.sqrt(1 - (at / (2 * taps)) ** 2)) / bessel0(kaiserShape);
  return (window * (k % 2 === 0 ? 1 : -1)) / (Math.PI * at);
});

/**
 * Writes every second sample of `samples[from…to)`, low-passed, to the start of `halved`; returns how many. Sample 0
 * is at the time of sample `from`; beyond the ends there is silence. `samples` and `halved` are not the same array.
 */
export function halveRate(
  samples: Float32Array | Float64Array,
  from: number,
  to: number,
  halved: Float64Array,
): number {
  const count = Math.max(0, (to - from + 1) >> 1);
  const inner = 2 * taps;
  for (let m = 0; m < count; m++) {
    const at = from + 2 * m;
    let sum = 0.5 * samples[at];
    if (at - from >= inner && to - at > inner) {
      for (let k = 0; k < taps; k++) {
        const away = 2 * k + 1;
        sum += weights[k] * (samples[at - away] + samples[at + away]);
      }
    } else {
      for (let k = 0; k < taps; k++) {
        const before = at - 2 * k - 1;
        const after = at + 2 * k + 1;
        const pair = (before >= from ? samples[before] : 0) + (after < to ? samples[after] : 0);
        sum += weights[k] * pair;
      }
    }
    halved[m] = sum;
  }
  return count;
}
