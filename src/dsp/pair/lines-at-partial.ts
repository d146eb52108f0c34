// One line or two at a partial, and where each is.
import { type MeasuredLine, measureLine } from '../line/measure-line';
import { type Window, windowOf } from '../spectrum/band-window';
import { leadSeconds, type SpectralLine, type StrikeSpectrum } from '../spectrum/strike-spectrum';
import { type DampedMode, dampedModes } from './damped-modes';
import { lateEnergy, rivalOf } from './rival-of';

export interface PartialLines {
  /** The stronger line, or the only one. */
  readonly main: MeasuredLine;
  /** The other one of two lines. */
  readonly rival: MeasuredLine | null;
}

/** Half the band's width, Hz (chosen, no source); its inner half is flat. */
const bandHz = 60;
/**
 * A note's own line, a second one and what glide or exchange leave beside them. On the strikes that this was set on
 * three lines merged two in one of nine strikes, five split one in as many.
 */
const modeCount = 4;
/**
 * Two lines are also taken apart with more modes, which leave room for an exchange of energy. Where the two answers lie
 * within this many cents of each other, the line is put at their mean.
 */
const finerCount = 6;
const finerCents = 1.5;
/** Before this time a strike blooms and glides, s; nothing shorter than this is taken apart into lines, s. */
const fromSeconds = 0.1;
const shortestSeconds = 0.25;
/** A mode farther than this from the line that was seen belongs to another, cents. */
const reachCents = 35;
/** No partial has a time constant outside these, s. */
const [shortestDecay, longestDecay] = [1 / 60, 20];
/**
 * Fit and modes that lie no farther apart mean the same line, cents: then the fit is the surer of the two. So it is
 * farther apart where it leaves no more than the noise beside the line: few damped lines are a poor likeness of a line
 * that wavers. Set on real strikes and on scenes 1–250.
 */
const sameCents = 0.5;
const sameWhereExplainedCents = 1.5;
const explained = 1;
/**
 * Of two lines the partial's own is the one with this many times the other's energy in the window's second half; if
 * neither has, the one that is stronger over the whole window. Of 1, 4 and 10 the one with most partials right on the 178 real strikes.
 */
const lastsLonger = 4;
/**
 * Stated errors, one standard deviation, are what the fit by phase knows of its noise, what a sum of damped lines leaves
 * out (`least…`, cents), and shares of how far ways of measuring lie apart that would agree on one steady line: the fit
 * by phase and the mode, fewer modes, more modes. No distance counts for more than `mostApart` cents. Set on
 * the 178 real strikes together: their proportions by likelihood, their size so that 95 % lie within two stated errors.
 * `bench:strikes -- -t accuracy` sets the size again with each note left out; the proportions were not left out in turn.
 */
const mostApart = 3;
const coarseCount = 2;
const wherePhase = { shareOfApart: 1, shareOfCoarse: 0.36 };
const whereMode = { least: 0.34, shareOfApart: 0.2, shareOfCoarse: 1 };
const wherePair = { least: 0.26, shareOfFiner: 1.4 };
/**
 * Modes weaker than this part of the strongest do not count when ways of measuring are compared (chosen, no source).
 */
const leastPart = 1 / 8;

/**
 * The line or the two lines around the spectral line `line` in `window`; null where nothing steady is there. A line that
 * only decays, or glides and wavers as one, is measured by `measureLine`. Where the few damped lines of which the band
 * is made up say something else, they are believed: a single line with a glide and a free envelope fits two lines as
 * well, and puts itself between them.
 */
export function linesAtPartial(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  others: readonly SpectralLine[],
  window: Window,
): PartialLines | null {
  const single = measureLine(spectrum, line, others, window);
  const from = Math.max(window.from, fromSeconds);
  if (single?.isPlain || window.to - from < shortestSeconds) return single && only(single);
  const mark = spectrum.work.mark();
  const band = windowOf(spectrum.band(line.hz, bandHz), { from, to: window.to });
  const { modes, unexplained, coarser } = dampedModes(band, modeCount, coarseCount);
  const start = Math.ceil((leadSeconds + from) * band.rate) / band.rate - leadSeconds;
  const seen = line.hz - band.centreHz;
  const reach = centsOf(line.hz) * reachCents;
  const main = modes.find(
    ({ offsetHz, decayRate }) =>
      Math.abs(offsetHz - seen) < reach &&
      decayRate < 1 / shortestDecay &&
      decayRate > 1 / longestDecay,
  );
  if (!main) {
    spectrum.work.release(mark);
    return single && only(single);
  }
  const lineOf = (mode: DampedMode, sigmaCents: number): MeasuredLine => ({
    hz: band.centreHz + mode.offsetHz,
    sigmaHz: sigmaCents * centsOf(line.hz),
    decaySeconds: mode.decayRate * longestDecay > 1 ? 1 / mode.decayRate : longestDecay,
    amplitude: mode.amplitude,
    glideHz: single?.glideHz ?? 0,
    unexplained,
    misfit: single?.misfit ?? 1,
    from: start,
    to: window.to,
    isPlain: false,
  });
  const apart = single
    ? Math.min(mostApart, Math.abs(single.hz - band.centreHz - main.offsetHz) / centsOf(line.hz))
    : mostApart;
  const length = band.count / band.rate;
  const rival = rivalOf(main, modes, { seconds: length, hz: line.hz });
  const finer = rival ? dampedModes(band, finerCount).modes : [];
  spectrum.work.release(mark);
  if (rival) {
    const between = (mode: DampedMode): MeasuredLine => {
      const near = nearestOf(finer, mode, centsOf(line.hz) * finerCents);
      const offsetHz = (mode.offsetHz + (near ?? mode).offsetHz) / 2;
      const { least, shareOfFiner } = wherePair;
      const sigma = Math.hypot(least, shareOfFiner * awayFrom(finer, offsetHz, line.hz));
      return lineOf({ ...mode, offsetHz }, sigma);
    };
    return lateEnergy(rival, length) > lastsLonger * lateEnergy(main, length)
      ? { main: between(rival), rival: between(main) }
      : { main: between(main), rival: between(rival) };
  }
  const same = single && single.misfit < explained ? sameWhereExplainedCents : sameCents;
  if (!single || apart > same) {
    const { least, shareOfApart, shareOfCoarse } = whereMode;
    const coarse = awayFrom(coarser, main.offsetHz, line.hz);
    return only(lineOf(main, Math.hypot(least, shareOfApart * apart, shareOfCoarse * coarse)));
  }
  const coarse = awayFrom(coarser, single.hz - band.centreHz, line.hz);
  const { shareOfApart, shareOfCoarse } = wherePhase;
  const doubt = Math.hypot(shareOfApart * apart, shareOfCoarse * coarse);
  return only({ ...single, sigmaHz: Math.hypot(single.sigmaHz, centsOf(line.hz) * doubt) });
}

/**
 * How far the nearest of the stronger `modes` (strongest first) lies from `offsetHz`, cents at `hz`; at most
 * `mostApart`.
 */
function awayFrom(modes: readonly DampedMode[], offsetHz: number, hz: number): number {
  const least = leastPart * (modes[0]?.energy ?? 0);
  const distances = modes
    .filter((mode) => mode.energy > least)
    .map((mode) => Math.abs(mode.offsetHz - offsetHz) / centsOf(hz));
  return Math.min(mostApart, ...distances);
}

/** The mode of `modes` nearest to `mode` and at least half as strong, if it is at most `reachHz` away. */
function nearestOf(
  modes: readonly DampedMode[],
  mode: DampedMode,
  reachHz: number,
): DampedMode | null {
  const away = (other: DampedMode): number => Math.abs(other.offsetHz - mode.offsetHz);
  const near = modes.filter((other) => away(other) < reachHz && other.energy > mode.energy / 2);
  return near.toSorted((a, b) => away(a) - away(b))[0] ?? null;
}

const only = (main: MeasuredLine): PartialLines => ({ main, rival: null });
/** One cent at `hz`, Hz. */
const centsOf = (hz: number): number => (hz * Math.LN2) / 1200;
