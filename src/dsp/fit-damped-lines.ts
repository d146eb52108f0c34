// Non-linear least squares: a few damped complex exponentials in a narrow band, one of them with a glide.
import { factorise, solveFactorised } from './solve-symmetric';

/** Complex samples of one narrow band, heterodyned to its centre. */
export interface BandSignal {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly count: number;
  /** Samples per second. */
  readonly rate: number;
  /** The band passes everything up to this distance from its centre unchanged, Hz. */
  readonly flatHz: number;
}

export interface DampedLine {
  /** Offset from the band's centre, Hz. */
  readonly offsetHz: number;
  /** One standard error of the frequency, Hz. */
  readonly sigmaHz: number;
  /** Amplitude decay rate, 1/s (1 / time constant). */
  readonly decayRate: number;
  /** Amplitude at the first sample of the window. */
  readonly amplitude: number;
  /** Phase at the first sample of the window, without the glide, radians. */
  readonly phase: number;
}

export interface DampedFit {
  readonly lines: readonly DampedLine[];
  /** The window's energy: sum of |z|². */
  readonly energy: number;
  /** Part of the window's energy that the lines do not explain, 0…1. */
  readonly unexplained: number;
  /** Phase of the first line's glide at the first sample, radians; 0 without one. */
  readonly glide: number;
}

/** Time constant of the glide's remainder, s (most of a glide is gone 0.2 s after the strike). */
const glideSeconds = 0.06;
const perLine = 4;
const iterationLimit = 30;

/**
 * Fits damped lines near `seedsHz` (offsets from the band's centre) to the window and returns them in
 * the same order; the first line may also glide: its phase carries c·exp(−t/0.06 s).
 * Levenberg–Marquardt on (Re a, Im a, ω, decay) per line; standard errors from the Gauss–Newton
 * matrix and the residual variance (Kay, Fundamentals of Statistical Signal Processing I, 1993, ch. 8).
 */
export function fitDampedLines(
  signal: BandSignal,
  seedsHz: readonly number[],
  gliding: boolean,
): DampedFit | null {
  const { re, im, count, rate } = signal;
  const lineCount = seedsHz.length;
  const size = lineCount * perLine + (gliding ? 1 : 0);
  if (lineCount === 0 || 2 * count <= size + 2) return null;
  let parameters = startingPoint(signal, seedsHz, size);
  const basisRe = new Float64Array(size);
  const basisIm = new Float64Array(size);
  const normal = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  let energy = 0;
  for (let n = 0; n < count; n++) energy += (re[n] ?? 0) ** 2 + (im[n] ?? 0) ** 2;
  if (!(energy > 0)) return null;

  // Each line's e^((iω − d)t) as a pointer that turns and shrinks from sample to sample.
  const pointers = new Float64Array(lineCount * perLine);
  const startPointers = (p: Float64Array): void => {
    for (let at = 0; at < pointers.length; at += perLine) {
      const shrink = Math.exp(-(p[at + 3] ?? 0) / rate);
      pointers[at] = 1;
      pointers[at + 1] = 0;
      pointers[at + 2] = shrink * Math.cos((p[at + 2] ?? 0) / rate);
      pointers[at + 3] = shrink * Math.sin((p[at + 2] ?? 0) / rate);
    }
  };

  const evaluate = (p: Float64Array, withNormal: boolean): number => {
    let cost = 0;
    if (withNormal) {
      normal.fill(0);
      gradient.fill(0);
    }
    startPointers(p);
    const fade = Math.exp(-1 / (rate * glideSeconds));
    let fading = 1;
    for (let n = 0; n < count; n++) {
      const t = n / rate;
      let modelRe = 0;
      let modelIm = 0;
      for (let line = 0; line < lineCount; line++) {
        const at = line * perLine;
        let cos = pointers[at] ?? 0;
        let sin = pointers[at + 1] ?? 0;
        const [stepCos, stepSin] = [pointers[at + 2] ?? 0, pointers[at + 3] ?? 0];
        pointers[at] = cos * stepCos - sin * stepSin;
        pointers[at + 1] = cos * stepSin + sin * stepCos;
        const glide = gliding && line === 0 ? fading : 0;
        if (glide > 0) {
          const angle = glide * (p[size - 1] ?? 0);
          const [turnCos, turnSin] = [Math.cos(angle), Math.sin(angle)];
          [cos, sin] = [cos * turnCos - sin * turnSin, cos * turnSin + sin * turnCos];
        }
        const lineRe = (p[at] ?? 0) * cos - (p[at + 1] ?? 0) * sin;
        const lineIm = (p[at] ?? 0) * sin + (p[at + 1] ?? 0) * cos;
        modelRe += lineRe;
        modelIm += lineIm;
        if (!withNormal) continue;
        basisRe[at] = cos;
        basisIm[at] = sin;
        basisRe[at + 1] = -sin;
        basisIm[at + 1] = cos;
        basisRe[at + 2] = -t * lineIm;
        basisIm[at + 2] = t * lineRe;
        basisRe[at + 3] = -t * lineRe;
        basisIm[at + 3] = -t * lineIm;
        if (gliding && line === 0) {
          basisRe[size - 1] = -glide * lineIm;
          basisIm[size - 1] = glide * lineRe;
        }
      }
      fading *= fade;
      const errorRe = (re[n] ?? 0) - modelRe;
      const errorIm = (im[n] ?? 0) - modelIm;
      cost += errorRe * errorRe + errorIm * errorIm;
      if (!withNormal) continue;
      for (let row = 0; row < size; row++) {
        const rowRe = basisRe[row] ?? 0;
        const rowIm = basisIm[row] ?? 0;
        gradient[row] = (gradient[row] ?? 0) + rowRe * errorRe + rowIm * errorIm;
        for (let column = 0; column <= row; column++) {
          const index = row * size + column;
          normal[index] =
            (normal[index] ?? 0) + rowRe * (basisRe[column] ?? 0) + rowIm * (basisIm[column] ?? 0);
        }
      }
    }
    return cost;
  };

  let damping = 1e-3;
  let cost = evaluate(parameters, true);
  const factor = new Float64Array(size * size);
  for (let iteration = 0; iteration < iterationLimit; iteration++) {
    factor.set(normal);
    for (let k = 0; k < size; k++) {
      factor[k * size + k] = (normal[k * size + k] ?? 0) * (1 + damping) + 1e-300;
    }
    if (!factorise(factor, size)) {
      damping *= 10;
      if (damping > 1e6) return null;
      continue;
    }
    const step = gradient.slice();
    solveFactorised(factor, size, step);
    const trial = parameters.map((value, k) => value + (step[k] ?? 0));
    const trialCost = evaluate(trial, false);
    if (trialCost < cost) {
      const gain = (cost - trialCost) / cost;
      parameters = trial;
      damping = Math.max(damping / 8, 1e-9);
      cost = evaluate(parameters, true);
      if (gain < 1e-9) break;
    } else {
      damping *= 6;
      if (damping > 1e6) break;
    }
  }
  return resultOf(parameters, normal, size, lineCount, cost, energy, count);
}

function startingPoint(signal: BandSignal, seedsHz: readonly number[], size: number): Float64Array {
  const { re, im, count, rate } = signal;
  const parameters = new Float64Array(size);
  seedsHz.forEach((seed, line) => {
    const omega = 2 * Math.PI * seed;
    // Two half-window projections give the amplitude and a first decay.
    const half = Math.max(1, count >> 1);
    const first = project(re, im, 0, half, rate, omega);
    const second = project(re, im, count - half, count, rate, omega);
    const ratio = Math.hypot(...first) / Math.max(1e-30, Math.hypot(...second));
    const decay = Math.min(40, Math.max(0.2, Math.log(Math.max(ratio, 1.02)) / (half / rate)));
    const grow = Math.exp((decay * half) / rate / 2);
    const at = line * perLine;
    parameters[at] = first[0] * grow;
    parameters[at + 1] = first[1] * grow;
    parameters[at + 2] = omega;
    parameters[at + 3] = decay;
  });
  return parameters;
}

function project(
  re: Float64Array,
  im: Float64Array,
  from: number,
  to: number,
  rate: number,
  omega: number,
): [number, number] {
  let sumRe = 0;
  let sumIm = 0;
  for (let n = from; n < to; n++) {
    const angle = (omega * n) / rate;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    sumRe += (re[n] ?? 0) * cos + (im[n] ?? 0) * sin;
    sumIm += (im[n] ?? 0) * cos - (re[n] ?? 0) * sin;
  }
  return [sumRe / (to - from), sumIm / (to - from)];
}

function resultOf(
  parameters: Float64Array,
  normal: Float64Array,
  size: number,
  lineCount: number,
  cost: number,
  energy: number,
  count: number,
): DampedFit | null {
  const factor = normal.slice();
  for (let k = 0; k < size; k++) {
    factor[k * size + k] = (factor[k * size + k] ?? 0) * (1 + 1e-12) + 1e-300;
  }
  if (!factorise(factor, size)) return null;
  const variance = cost / Math.max(1, 2 * count - size);
  const lines: DampedLine[] = [];
  for (let line = 0; line < lineCount; line++) {
    const at = line * perLine;
    const unit = new Float64Array(size);
    unit[at + 2] = 1;
    solveFactorised(factor, size, unit);
    const offsetHz = (parameters[at + 2] ?? 0) / (2 * Math.PI);
    const decayRate = parameters[at + 3] ?? 0;
    const amplitude = Math.hypot(parameters[at] ?? 0, parameters[at + 1] ?? 0);
    const sigmaHz = Math.sqrt(variance * Math.max(0, unit[at + 2] ?? 0)) / (2 * Math.PI);
    if (![offsetHz, decayRate, amplitude, sigmaHz].every(Number.isFinite)) return null;
    const phase = Math.atan2(parameters[at + 1] ?? 0, parameters[at] ?? 0);
    lines.push({ offsetHz, sigmaHz, decayRate, amplitude, phase });
  }
  const glide = size > lineCount * perLine ? (parameters[size - 1] ?? 0) : 0;
  return { lines, energy, unexplained: Math.min(1, cost / energy), glide };
}
