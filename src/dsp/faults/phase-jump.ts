// Samples that were lost without leaving zeros: every line goes on as loud as before, but from another phase.
// Limits are chosen, no source; the tests that leave samples out of scenes, and real strikes, hold them.
import { amplitudeOfDb } from '../../domain/numbers/decibel-levels';
import { StraightLineFit } from '../numbers/straight-line';
import type { BandSignal } from '../spectrum/band-signal';
import { leadSeconds, type SpectralLine, type StrikeSpectrum } from '../spectrum/strike-spectrum';

/**
 * How many lines are looked at, the strongest ones; how far below the strongest they may lie, dB; how many must jump.
 */
const mostLines = 3;
const faintestDb = -25;
const needed = 2;
const bandHz = 90;
/** Lines are drawn through the phase over this time on either side of a moment, leaving out the band's own blur, s. */
const reachSeconds = 0.055;
const blurSeconds = 0.009;
/** Jumps are looked for from here on, s: earlier the pitch still glides fast. */
const earliest = 0.08;
/** A jump is at least this large, radians, and this many standard errors. */
const smallestJump = 0.6;
const leastErrors = 6;
/**
 * In the trough of a beat the phase may turn over; the amplitude there falls below this fraction of its surroundings.
 */
const trough = 0.55;
/** A line that has faded to this fraction of its start tells nothing any more. */
const faded = 0.06;

/**
 * Moments (s after the onset, from 0.08 s to `until`) at which samples may be missing from the sound that `spectrum`
 * has loaded: the phases of its strongest `lines` jump at one moment while their amplitudes go on. On real strikes two
 * beating lines do that too: only with a click there (`hasClick`) it is a seam.
 */
export function phaseJumps(
  spectrum: StrikeSpectrum,
  lines: readonly SpectralLine[],
  until: number,
): readonly number[] {
  const loudest = lines[0]?.amplitude ?? 0;
  const asked: SpectralLine[] = [];
  for (const line of lines) {
    const isApart = asked.every((other) => Math.abs(other.hz - line.hz) > 2 * bandHz);
    if (
      asked.length < mostLines &&
      isApart &&
      line.amplitude > loudest * amplitudeOfDb(faintestDb)
    ) {
      asked.push(line);
    }
  }
  // One line alone may turn over in the trough of a beat; two do not at one moment.
  if (asked.length < needed) return [];
  const tracks = asked.map((line) => jumpsOf(spectrum, line.hz, until));
  const times = tracks.flat();
  return times.filter(
    (time) =>
      tracks.filter((track) => track.some((other) => Math.abs(other - time) < 2 * blurSeconds))
        .length >= needed,
  );
}

/** Moments (s after the onset) at which the line near `hz` jumps. */
function jumpsOf(spectrum: StrikeSpectrum, hz: number, until: number): number[] {
  const mark = spectrum.work.mark();
  const band = spectrum.band(hz, Math.min(bandHz, 0.85 * hz));
  const jumps = jumpsIn(band, until);
  spectrum.work.release(mark);
  return jumps;
}

function jumpsIn(band: BandSignal, until: number): number[] {
  const reach = Math.round(reachSeconds * band.rate);
  const blur = Math.max(1, Math.round(blurSeconds * band.rate));
  const first = Math.ceil((leadSeconds + earliest) * band.rate);
  const last = Math.floor((leadSeconds + until) * band.rate) - reach;
  const start = amplitudeAt(band, first);
  const jumps: number[] = [];
  for (let at = first; at < last; at++) {
    if (amplitudeAt(band, at) < faded * start) break;
    const before = drawPhase(band, at - reach, at - blur, at);
    const after = drawPhase(band, at + blur, at + reach, at);
    const jump = Math.abs(wrapped(after.phase - before.phase));
    const error = Math.hypot(before.error, after.error);
    const mean = 0.5 * (before.amplitude + after.amplitude);
    const inTrough = Math.min(before.edge, after.edge) < trough * mean;
    if (jump > smallestJump && jump > leastErrors * error && !inTrough) {
      jumps.push(at / band.rate - leadSeconds);
    }
  }
  return jumps;
}

interface DrawnPhase {
  /** Phase at the moment in question, radians, with its standard error. */
  readonly phase: number;
  readonly error: number;
  /** Mean amplitude, and the amplitude extrapolated to the moment. */
  readonly amplitude: number;
  readonly edge: number;
}

/** Straight lines through phase and amplitude of samples `from`…`to`, extrapolated to sample `at`. */
function drawPhase(band: BandSignal, from: number, to: number, at: number): DrawnPhase {
  const { re, im } = band;
  let turnRe = 0;
  let turnIm = 0;
  for (let n = from + 1; n < to; n++) {
    const a = re[n];
    const b = im[n];
    const c = re[n - 1];
    const d = im[n - 1];
    turnRe += a * c + b * d;
    turnIm += b * c - a * d;
  }
  const turn = Math.atan2(turnIm, turnRe);
  let sumRe = 0;
  let sumIm = 0;
  for (let n = from; n < to; n++) {
    const angle = turn * (n - at);
    sumRe += re[n] * Math.cos(angle) + im[n] * Math.sin(angle);
    sumIm += im[n] * Math.cos(angle) - re[n] * Math.sin(angle);
  }
  const rough = Math.atan2(sumIm, sumRe);
  const phases = new StraightLineFit();
  const amplitudes = new StraightLineFit();
  for (let n = from; n < to; n++) {
    const x = re[n];
    const y = im[n];
    phases.add(n - at, wrapped(Math.atan2(y, x) - turn * (n - at) - rough));
    amplitudes.add(n - at, Math.sqrt(x * x + y * y));
  }
  const phase = phases.atZero();
  return {
    phase: rough + phase.value,
    error: phase.error,
    amplitude: amplitudes.mean(),
    edge: amplitudes.atZero().value,
  };
}

function amplitudeAt({ re, im }: BandSignal, n: number): number {
  const x = re[n];
  const y = im[n];
  return Math.sqrt(x * x + y * y);
}

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
