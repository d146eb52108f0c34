// One line or two at a partial, and where each is.
import { type MeasuredLine, measureLine } from '../line/measure-line';
import { type Window, windowOf } from '../spectrum/band-window';
import { leadSeconds, type SpectralLine, type StrikeSpectrum } from '../spectrum/strike-spectrum';
import { dampedModes, type Mode } from './damped-modes';
import { rivalOf } from './rival-of';

export interface PartialLines {
  /** The stronger line, or the only one. */
  readonly main: MeasuredLine;
  /** The other one of two lines. */
  readonly rival: MeasuredLine | null;
}

/** Half of the band's width, Hz; its inner half is flat. */
const bandHz = 60;
/**
 * A note's own line, a second one and what glide or exchange leave beside them. On the strikes that this was set on
 * three lines merged two in one of nine strikes, five split one in as many.
 */
const modeCount = 4;
/**
 * Two lines are parted with more modes as well, which leave room for an exchange of energy; a line is where both say on
 * the mean, if they are at most so far apart, cents.
 */
const finerCount = 6;
const finerCents = 1.5;
/** A strike blooms and glides before, s; nothing shorter is parted into lines, s. */
const fromSeconds = 0.1;
const shortestSeconds = 0.25;
/** A mode farther from the line that was seen belongs to another, cents. */
const reachCents = 35;
/** Time constants outside these are no partial's, s. */
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
 * What a sum of a few damped lines leaves out of a real partial, one standard deviation, cents, and the part of the
 * distance between fit and modes that is in the stated error: with the fit's value, and with the mode's, up to a limit.
 * Set on real strikes so that 95 % lie within two stated errors (`bench:strikes`, notes left out in turn).
 */
const leastCents = 0.13;
const shareWhereSame = 1;
const shareWhereApart = 0.25;
const mostApart = 3;

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
  const { modes, unexplained } = dampedModes(band, modeCount);
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
  const lineOf = (mode: Mode, sigmaCents: number): MeasuredLine => ({
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
    ? Math.abs(single.hz - band.centreHz - main.offsetHz) / centsOf(line.hz)
    : mostApart;
  const sigma = Math.hypot(leastCents, shareWhereApart * Math.min(mostApart, apart));
  const rival = rivalOf(main, modes, { seconds: band.count / band.rate, hz: line.hz });
  const finer = rival ? dampedModes(band, finerCount).modes : [];
  spectrum.work.release(mark);
  if (rival) {
    const between = (mode: Mode): MeasuredLine => {
      const near = nearestOf(finer, mode, centsOf(line.hz) * finerCents);
      return lineOf({ ...mode, offsetHz: (mode.offsetHz + (near ?? mode).offsetHz) / 2 }, sigma);
    };
    return { main: between(main), rival: between(rival) };
  }
  const same = single && single.misfit < explained ? sameWhereExplainedCents : sameCents;
  if (!single || apart > same) return only(lineOf(main, sigma));
  const sigmaHz = Math.hypot(single.sigmaHz, centsOf(line.hz) * shareWhereSame * apart);
  return only({ ...single, sigmaHz });
}

/** The mode of `modes` nearest to `mode` and at least half as strong, if it is at most `reachHz` away. */
function nearestOf(modes: readonly Mode[], mode: Mode, reachHz: number): Mode | null {
  const away = (other: Mode): number => Math.abs(other.offsetHz - mode.offsetHz);
  const near = modes.filter((other) => away(other) < reachHz && other.energy > mode.energy / 2);
  return near.toSorted((a, b) => away(a) - away(b))[0] ?? null;
}

const only = (main: MeasuredLine): PartialLines => ({ main, rival: null });
/** One cent at `hz`, Hz. */
const centsOf = (hz: number): number => (hz * Math.LN2) / 1200;
