// The settled frequency of one decaying line from its phase: the amplitude may do what it likes.
import type { BandSignal } from '../spectrum/band-signal';
import { PhaseFit, type RoughLine } from './phase-fit';
import { glideIndex, settledIndex } from './phase-model';

export interface SettledFrequency {
  /** Offset from the band's centre over the settled part of the window, Hz. */
  readonly offsetHz: number;
  /** Where that part begins, s after the strike. */
  readonly from: number;
  /** One standard error, Hz. */
  readonly sigmaHz: number;
  /** Frequency at the strike above the settled one, Hz; negative where the line glides up. */
  readonly glideHz: number;
  /** Energy across the line that neither envelope nor phase explains, as a fraction of the line's energy. */
  readonly across: number;
  /** The same as a multiple of the noise beside the line: 1 if nothing else is there. */
  readonly misfit: number;
  /** The line itself over the window, to be taken out of the band. */
  readonly model: { readonly re: Float64Array; readonly im: Float64Array };
}

/** The search starts from glides of these time constants, s (this and the limits below: chosen, no source). */
const glideStarts = [0.045, 0.09, 0.022];
/** Once a descent leaves less than this multiple of the noise, no further starting point is tried. */
const goodEnough = 1.2;
const fewestSamples = 16;
/**
 * The settled part begins at the first of these times (s) from which on the glide adds less than `settledCents` to the
 * mean frequency, or at the last of them if it never does; at least `shortestSettled` seconds are always left.
 */
const settledTimes = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35];
const settledCents = 0.015;
const shortestSettled = 0.1;

/**
 * Fits z(t) = A(t)·exp(iθ(t)) with a free real envelope A and the phase of `PhaseModel` to a band in
 * which only this line is left. `after`: time of the first sample after the strike, s; `centreHz`: the
 * band's centre. The standard error comes from the noise measured beside the line and holds the doubt
 * about glide and swing. A free A costs no certainty, because amplitude and phase of a line are
 * independent (Kay, Fundamentals of Statistical Signal Processing I, 1993, ch. 3.11).
 */
export function settledFrequency(
  band: BandSignal,
  rough: RoughLine,
  after: number,
  centreHz: number,
): SettledFrequency | null {
  const { count, work } = band;
  if (count < fewestSamples) return null;
  const model = { re: work.take(count), im: work.take(count) };
  const mark = work.mark();
  const fit = new PhaseFit(band, rough, after, centreHz + rough.offsetHz);
  const best = bestOf(fit);
  const settled = best && resultAt(fit, best, model);
  work.release(mark);
  return settled;
}

/** The parameters of the best descent from all starting points. */
function bestOf(fit: PhaseFit): Float64Array | null {
  const { band, model, rough } = fit;
  let best: Float64Array | null = null;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const tau of glideStarts) {
    const start = band.work.take(model.size);
    model.startAt(tau, rough.glide, start);
    if (fit.noise === 0) fit.listenToNoise(start);
    let cost = fit.descend(start);
    if (!best && Number.isFinite(cost)) {
      // The first descent only finds the noise, by which all costs are then judged.
      fit.listenToNoise(start);
      cost = fit.descend(start);
    }
    if (cost < bestCost) [best, bestCost] = [start, cost];
    if (bestCost < goodEnough * band.count) break;
  }
  return best;
}

function resultAt(
  fit: PhaseFit,
  parameters: Float64Array,
  model: SettledFrequency['model'],
): SettledFrequency | null {
  fit.rotate(parameters);
  fit.envelope.fit(fit.along);
  fit.fillNormal(parameters);
  const { from, share } = settledPart(fit, parameters);
  const variance = fit.settledVariance(share);
  if (variance === null) return null;
  const glide = parameters[glideIndex];
  const settled = parameters[settledIndex] + share * glide;
  return {
    offsetHz: fit.rough.offsetHz + settled / (2 * Math.PI),
    from,
    sigmaHz: Math.sqrt(variance) / (2 * Math.PI),
    glideHz: glide / (2 * Math.PI),
    ...lineOf(fit, model),
  };
}

/**
 * From when on the line is called settled, s after the strike, and the share of the glide that its mean frequency
 * still holds there, weighed by energy: what the fit thinks would come later is not reported.
 */
function settledPart(
  { model, band, envelope, hz }: PhaseFit,
  parameters: Float64Array,
): { readonly from: number; readonly share: number } {
  const { after } = model;
  const end = after + band.count / band.rate;
  const limit = (settledCents * Math.LN2 * 2 * Math.PI * hz) / 1200;
  let settled = { from: after, share: model.glideShare(parameters, envelope.values, 0) };
  for (const from of settledTimes) {
    if (Math.abs(parameters[glideIndex] * settled.share) < limit) break;
    if (from <= after || end - from < shortestSettled) continue;
    const first = Math.ceil((from - after) * band.rate);
    settled = { from, share: model.glideShare(parameters, envelope.values, first) };
  }
  return settled;
}

/** Fills `model` with the fitted line over the window; returns how much lies across it. */
function lineOf(
  { band, along, across, envelope, noise }: PhaseFit,
  model: SettledFrequency['model'],
): Pick<SettledFrequency, 'across' | 'misfit' | 'model'> {
  let crossing = 0;
  let lacking = 0;
  let energy = 0;
  for (let n = 0; n < band.count; n++) {
    const u = along[n];
    const v = across[n];
    const amplitude = envelope.values[n];
    crossing += v * v;
    lacking += Math.min(0, u) ** 2;
    energy += amplitude * amplitude;
    // (along + i·across) is the band turned back by the phase, so that the turn follows from both.
    const a = amplitude / (u * u + v * v + 1e-300);
    const x = band.re[n];
    const y = band.im[n];
    model.re[n] = a * (x * u + y * v);
    model.im[n] = a * (y * u - x * v);
  }
  const misfit = (crossing + lacking) / (noise * band.count);
  return { across: energy > 0 ? crossing / energy : 1, misfit, model };
}
