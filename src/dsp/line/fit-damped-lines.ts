// Non-linear least squares: a few damped complex exponentials in a narrow band, one of them with a glide.

import { solveFactorised } from '../../domain/numbers/cholesky';
import { factoriseDamped, undamped } from '../numbers/damped-equations';
import type { BandSignal } from '../spectrum/band-signal';
import { powerOf, project } from '../spectrum/band-sums';
import type { DampedLine } from '../spectrum/damped-line';
import { DampedModel, perLine } from './damped-model';

export interface DampedFit {
  readonly lines: readonly DampedLine[];
  /** The window's energy: sum of |z|². */
  readonly energy: number;
  /** Part of the window's energy that the lines do not explain, 0…1. */
  readonly unexplained: number;
  /** Phase of the first line's glide at the first sample, radians; 0 without one. */
  readonly glide: number;
}

/** Limits of the descent (this and the next two: chosen, no source). */
const iterationLimit = 30;
/** A step that explains less than this part of what is left is the last. */
const leastGain = 1e-9;
const largestDamping = 1e6;

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
  const size = seedsHz.length * perLine + (gliding ? 1 : 0);
  if (seedsHz.length === 0 || 2 * signal.count <= size + 2) return null;
  const energy = powerOf(signal) * signal.count;
  if (!(energy > 0)) return null;
  const mark = signal.work.mark();
  const model = new DampedModel(signal, seedsHz.length, gliding);
  const parameters = startingPoint(signal, seedsHz, size);
  const cost = descend(model, parameters);
  const fit = cost === null ? null : resultOf(model, parameters, cost, energy);
  signal.work.release(mark);
  return fit;
}

/**
 * Moves `parameters` to the nearest minimum; returns the energy left there, or null if the equations cannot be solved.
 */
function descend(model: DampedModel, parameters: Float64Array): number | null {
  const { size, normal, gradient, band } = model;
  const [factor, step, trial] = [size ** 2, size, size].map((length) => band.work.take(length));
  let damping = 1e-3;
  let cost = model.place(parameters);
  model.fillNormal(parameters);
  for (let iteration = 0; iteration < iterationLimit; iteration++) {
    if (!factoriseDamped(normal, size, damping, factor)) {
      damping *= 10;
      if (damping > largestDamping) return null;
      continue;
    }
    for (let k = 0; k < size; k++) step[k] = gradient[k];
    solveFactorised(factor, size, step);
    for (let k = 0; k < size; k++) trial[k] = parameters[k] + step[k];
    const trialCost = model.place(trial);
    if (trialCost < cost) {
      const gain = (cost - trialCost) / cost;
      for (let k = 0; k < size; k++) parameters[k] = trial[k];
      damping = Math.max(damping / 8, 1e-9);
      cost = trialCost;
      model.fillNormal(parameters);
      if (gain < leastGain) break;
    } else {
      damping *= 6;
      if (damping > largestDamping) break;
    }
  }
  return cost;
}

function startingPoint(signal: BandSignal, seedsHz: readonly number[], size: number): Float64Array {
  const { re, im, count, rate, work } = signal;
  const parameters = work.zeros(size);
  // Two half-window projections give the amplitude and a first decay.
  const half = Math.max(1, count >> 1);
  seedsHz.forEach((seed, line) => {
    const omega = 2 * Math.PI * seed;
    const first = project(re, im, half, 0, omega / rate);
    const second = project(re, im, half, 0, omega / rate, count - half);
    const ratio = Math.hypot(...first) / Math.max(1e-30, Math.hypot(...second));
    const decay = Math.min(40, Math.max(0.2, Math.log(Math.max(ratio, 1.02)) / (half / rate)));
    const grow = Math.exp((decay * half) / rate / 2);
    const at = line * perLine;
    parameters[at] = (first[0] / half) * grow;
    parameters[at + 1] = (first[1] / half) * grow;
    parameters[at + 2] = omega;
    parameters[at + 3] = decay;
  });
  return parameters;
}

function resultOf(
  { size, normal, band, lineCount, gliding }: DampedModel,
  parameters: Float64Array,
  cost: number,
  energy: number,
): DampedFit | null {
  const factor = band.work.take(size ** 2);
  if (!factoriseDamped(normal, size, undamped, factor)) return null;
  const variance = cost / Math.max(1, 2 * band.count - size);
  const lines: DampedLine[] = [];
  for (let line = 0; line < lineCount; line++) {
    const at = line * perLine;
    const unit = band.work.zeros(size);
    unit[at + 2] = 1;
    solveFactorised(factor, size, unit);
    const offsetHz = parameters[at + 2] / (2 * Math.PI);
    const decayRate = parameters[at + 3];
    const amplitude = Math.hypot(parameters[at], parameters[at + 1]);
    const sigmaHz = Math.sqrt(variance * Math.max(0, unit[at + 2])) / (2 * Math.PI);
    if (![offsetHz, decayRate, amplitude, sigmaHz].every(Number.isFinite)) return null;
    const phase = Math.atan2(parameters[at + 1], parameters[at]);
    lines.push({ offsetHz, sigmaHz, decayRate, amplitude, phase });
  }
  const glide = gliding ? parameters[size - 1] : 0;
  return { lines, energy, unexplained: Math.min(1, cost / energy), glide };
}
