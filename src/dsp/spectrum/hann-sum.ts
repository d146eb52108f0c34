// One value of a spectrum, at any frequency and over any stretch of sound.

export interface HannSum {
  readonly re: number;
  readonly im: number;
  readonly size: number;
}

/** Where window and phase begin at the first sample: how far it lies inside the window, samples, and the phase, cycles. */
interface Start {
  readonly window: number;
  readonly cycles: number;
}

/** The window as between two samples, the phase counted from the first one. */
const usual: Start = { window: 0.5, cycles: 0 };

/**
 * Σ w(n)·x(from + n)·exp(−2πi·f·n) over `length` samples: f in cycles per sample, w a Hann window. A steady line of
 * amplitude A at f gives A·length/4.
 */
export function hannSum(
  samples: Float32Array,
  from: number,
  length: number,
  cyclesPerSample: number,
  start: Start = usual,
): HannSum {
  let re = 0;
  let im = 0;
  // Two pointers turn from sample to sample: one with the line, one with the window.
  const turn = 2 * Math.PI * cyclesPerSample;
  const turnCos = Math.cos(turn);
  const turnSin = Math.sin(turn);
  const openTurn = (2 * Math.PI) / length;
  const openCos = Math.cos(openTurn);
  const openSin = Math.sin(openTurn);
  let cos = Math.cos(2 * Math.PI * start.cycles);
  let sin = Math.sin(2 * Math.PI * start.cycles);
  let open = Math.cos((2 * Math.PI * start.window) / length);
  let openAcross = Math.sin((2 * Math.PI * start.window) / length);
  for (let n = 0; n < length; n++) {
    const value = (0.5 - 0.5 * open) * samples[from + n];
    re += value * cos;
    im -= value * sin;
    const nextCos = cos * turnCos - sin * turnSin;
    sin = cos * turnSin + sin * turnCos;
    cos = nextCos;
    const nextOpen = open * openCos - openAcross * openSin;
    openAcross = open * openSin + openAcross * openCos;
    open = nextOpen;
  }
  return { re, im, size: Math.hypot(re, im) };
}
