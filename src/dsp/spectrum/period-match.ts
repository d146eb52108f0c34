// How well a sound repeats itself after a given time (P. McLeod & G. Wyvill, "A smarter way to find pitch", ICMC 2005).

interface Sampled {
  readonly samples: Float64Array;
  readonly count: number;
  readonly rate: number;
}

/** The period may be off by this fraction (chosen, no source), as the octaves of pans are. */
const reach = 0.012;

/**
 * The normalised square difference of samples `from`…`to` (s of the sound) at the best lag near `seconds`: 1 where it
 * repeats itself exactly, 0 where it does not at all; −1 at half a period of a sine.
 */
export function periodMatch(sound: Sampled, from: number, to: number, seconds: number): number {
  const { samples, count, rate } = sound;
  const first = Math.max(0, Math.round(from * rate));
  const end = Math.min(count, Math.round(to * rate));
  const lag = seconds * rate;
  const least = Math.max(2, Math.floor(lag * (1 - reach)));
  const most = Math.min(Math.ceil(lag * (1 + reach)), Math.floor((end - first) / 2));
  // Long lags need no steps finer than a hundredth of their length: the curve is smooth.
  const step = Math.max(1, Math.floor((most - least) / 8));
  let best = -1;
  for (let tau = least; tau <= most; tau += step) {
    let cross = 0;
    let power = 1e-12;
    for (let n = first; n + tau < end; n++) {
      const a = samples[n];
      const b = samples[n + tau];
      cross += a * b;
      power += a * a + b * b;
    }
    best = Math.max(best, (2 * cross) / power);
  }
  return most < least ? 0 : best;
}
