// The partials of a struck note whose fundamental line is known, each measured by itself.
import type { MeasuredPartial, ThirdPartial, UpperPartial } from '../../domain/measurement/strike';
import { cents, centsBetween, decibels, hertz, seconds } from '../../domain/tuning/units';
import { type MeasuredLine, measureLine } from '../line/measure-line';
import { measurePair } from '../pair/line-pair';
import type { Window } from '../spectrum/band-window';
import type { SpectralLine, StrikeSpectrum } from '../spectrum/strike-spectrum';
import { reachOfPartial } from './choose-note';

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
/**
 * Real thirds wander longer than the model of a glide allows, lower ones for longer: they are measured once the
 * fundamental has turned so often, within these bounds, s.
 */
const turnsBeforeThird = 30;
const earliestThird = 0.08;
const latestThird = 0.13;
/** A line further from a third partial's place lies nearer to another note's fundamental, cents. */
const reachOfThird = 50;
/** Two lines at the octave are looked for in a window at least so long, s. */
const shortestForPair = 0.25;
/**
 * What energy exchange leaves in a frequency when all that shows in phase and envelope is taken out, one standard
 * deviation, cents for 1000 Hz. It grows with the frequency: the higher a partial the sooner it has faded, and the
 * fewer turns of the exchange are heard. Size and law were set on seeded scenes (1–300, 3001–3300) and hold on others.
 */
const exchangeCents = 0.035;

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
  const upper = (order: 2 | 3 | 4, reach: number, window: Window): MeasuredUpper | null => {
    const line = strongestNear(sound.lines, order * ownHz, reach);
    if (!line || line === fundamental) return null;
    const found = measureLine(sound.spectrum, line, sound.lines, window);
    if (!found || found.hz <= 0 || found.unexplained > largestUnexplained) return null;
    const partial = partialOf(found, order * targetHz);
    const centsFromOwn = centsBetween(order * ownHz, found.hz);
    if (partial.sigmaCents > largestSigmaCents) return null;
    return Math.abs(centsFromOwn) > reach ? null : { line, partial: { ...partial, centsFromOwn } };
  };
  const octave = upper(2, reachOfPartial, sound.window);
  const settled = Math.min(latestThird, Math.max(earliestThird, turnsBeforeThird / ownHz));
  const late = { from: Math.max(settled, sound.window.from), to: sound.window.to };
  const twelfth = upper(3, reachOfThird, late);
  const doubleOctave = upper(4, reachOfThird, late);
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
    sigmaCents: cents(Math.hypot(fitted, (exchangeCents * line.hz) / 1000)),
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

function strongestNear(
  lines: readonly SpectralLine[],
  hz: number,
  reach: number,
): SpectralLine | null {
  return lines.find((line) => Math.abs(centsBetween(hz, line.hz)) <= reach) ?? null;
}
