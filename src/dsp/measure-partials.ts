// The partials of a struck note whose fundamental line is known, each measured by itself.
import type { MeasuredPartial, ThirdPartial, UpperPartial } from '../domain/measurement/strike';
import { cents, centsBetween, decibels, hertz, seconds } from '../domain/tuning/units';
import type { Window } from './band-window';
import { reachOfPartial } from './choose-note';
import { measurePair } from './line-pair';
import { type MeasuredLine, measureLine } from './measure-line';
import type { SpectralLine, StrikeSpectrum } from './strike-spectrum';

/** A struck sound ready to be measured. */
export interface Measurable {
  /** Loaded with the sound. */
  readonly spectrum: StrikeSpectrum;
  readonly lines: readonly SpectralLine[];
  readonly window: Window;
}

interface MeasuredUpper {
  readonly line: SpectralLine;
  readonly partial: UpperPartial;
}

/** Two lines at the octave: the stronger one, and its rival. */
interface OctaveLines {
  readonly own: UpperPartial;
  readonly rival: UpperPartial | null;
}

export interface UpperPartials {
  readonly octave: UpperPartial | null;
  /** The other one of two lines at the octave. */
  readonly octaveRival: UpperPartial | null;
  readonly third: ThirdPartial | null;
  /** All lines that belong to the note. */
  readonly taken: readonly SpectralLine[];
}

/** Largest part of a partial's energy that may be no line, and its largest standard error, cents. */
const largestUnexplained = 0.6;
const largestSigmaCents = 4.4;
/** A third partial's own glide is over by then, s. */
const thirdFrom = 0.08;
/** Two lines at the octave are looked for in a window at least so long, s. */
const shortestForPair = 0.25;
/**
 * What energy exchange leaves in a frequency when all that shows in phase and envelope is taken out, one
 * standard deviation, cents (found by the ear's benchmark).
 */
const exchangeCents = 0.033;

/**
 * Octave and third over a fundamental at `ownHz`, whose line is null where it is not heard; `targetHz` is where
 * the fundamental should be.
 */
export function upperPartials(
  sound: Measurable,
  fundamental: SpectralLine | null,
  ownHz: number,
  targetHz: number,
): UpperPartials {
  const upper = (order: 2 | 3 | 4, window: Window): MeasuredUpper | null => {
    const line = strongestNear(sound.lines, order * ownHz);
    if (!line || line === fundamental) return null;
    const found = measureLine(sound.spectrum, line, sound.lines, window);
    if (!found || found.hz <= 0 || found.unexplained > largestUnexplained) return null;
    const partial = partialOf(found, order * targetHz);
    const centsFromOwn = centsBetween(order * ownHz, found.hz);
    if (partial.sigmaCents > largestSigmaCents) return null;
    return Math.abs(centsFromOwn) > reachOfPartial
      ? null
      : { line, partial: { ...partial, centsFromOwn } };
  };
  const octave = upper(2, sound.window);
  const late = { from: Math.max(thirdFrom, sound.window.from), to: sound.window.to };
  const twelfth = upper(3, late);
  const doubleOctave = upper(4, late);
  const lines = octave && octaveLines(sound, octave, ownHz, targetHz);
  const taken = [fundamental, octave?.line, twelfth?.line, doubleOctave?.line];
  return {
    octave: lines?.own ?? null,
    octaveRival: lines?.rival ?? null,
    third: strongerThird(twelfth?.partial ?? null, doubleOctave?.partial ?? null),
    taken: taken.filter((line) => line !== undefined && line !== null),
  };
}

/** One line at the octave, or two where the upper note of the octave pair rings along. */
function octaveLines(
  sound: Measurable,
  { line, partial }: MeasuredUpper,
  ownHz: number,
  targetHz: number,
): OctaveLines {
  // The first look is too short to part two lines a few Hz apart.
  const pair =
    sound.window.to - sound.window.from < shortestForPair
      ? null
      : measurePair(sound.spectrum, line, sound.lines, sound.window);
  if (!pair) return { own: partial, rival: null };
  const [own, rival] = pair.lines
    .toSorted((a, b) => b.amplitude - a.amplitude)
    .map((each) => ({
      ...partialOf(each, 2 * targetHz),
      centsFromOwn: centsBetween(2 * ownHz, each.hz),
    }));
  return own && rival ? { own, rival } : { own: partial, rival: null };
}

/** A measured line as a partial whose place is `targetHz`. */
export function partialOf(line: MeasuredLine, targetHz: number): MeasuredPartial {
  const fitted = (1200 / Math.LN2) * (line.sigmaHz / line.hz);
  return {
    hz: hertz(line.hz),
    cents: centsBetween(targetHz, line.hz),
    sigmaCents: cents(Math.hypot(fitted, exchangeCents)),
    decaySeconds: seconds(line.decaySeconds),
    levelDb: decibels(20 * Math.log10(Math.max(line.amplitude, 1e-9))),
  };
}

function strongerThird(
  twelfth: UpperPartial | null,
  doubleOctave: UpperPartial | null,
): ThirdPartial | null {
  if (twelfth && (!doubleOctave || twelfth.levelDb > doubleOctave.levelDb)) {
    return { kind: 'twelfth', ...twelfth };
  }
  return doubleOctave ? { kind: 'double-octave', ...doubleOctave } : null;
}

function strongestNear(lines: readonly SpectralLine[], hz: number): SpectralLine | null {
  return lines.find((line) => Math.abs(centsBetween(hz, line.hz)) <= reachOfPartial) ?? null;
}
