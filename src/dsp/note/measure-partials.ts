// The partials of a struck note whose fundamental line is known, each measured by itself.

import type { MeasuredPartial, ThirdPartial, UpperPartial } from '../../domain/measurement/strike';
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { cents, centsBetween, decibels, hertz, seconds } from '../../domain/tuning/units';
import type { MeasuredLine } from '../line/measure-line';
import { linesAtPartial } from '../pair/lines-at-partial';
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
  /** The stronger one of two lines, or the only one, and the other. */
  readonly partial: UpperPartial;
  readonly rival: UpperPartial | null;
}

export interface UpperPartials {
  readonly octave: UpperPartial | null;
  /** The other one of two lines at the octave. */
  readonly octaveRival: UpperPartial | null;
  readonly third: ThirdPartial | null;
  readonly thirdRival: UpperPartial | null;
  /** All lines that belong to the note. */
  readonly taken: readonly SpectralLine[];
}

/**
 * The largest fraction of a partial's energy that no line explains, and its largest standard error, cents (chosen, no
 * source).
 */
const largestUnexplained = 0.6;
const largestSigmaCents = 4.4;
/**
 * Real thirds wander for longer than the model of a glide allows, low ones longest: they are measured once the
 * fundamental has turned this often, within these bounds, s (set on real strikes).
 */
const turnsBeforeThird = 30;
const earliestThird = 0.08;
const latestThird = 0.13;
/** A line further from a third partial's place lies nearer to another note's fundamental, cents. */
const reachOfThird = 50;
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
    const found = linesAtPartial(sound.spectrum, line, sound.lines, window);
    if (!found || found.main.hz <= 0 || found.main.unexplained > largestUnexplained) return null;
    const partialAt = (each: MeasuredLine): UpperPartial => ({
      ...partialOf(each, order * targetHz),
      centsFromOwn: centsBetween(order * ownHz, each.hz),
    });
    const partial = partialAt(found.main);
    if (partial.sigmaCents > largestSigmaCents || Math.abs(partial.centsFromOwn) > reach)
      return null;
    return { line, partial, rival: found.rival && partialAt(found.rival) };
  };
  const octave = upper(2, reachOfPartial, sound.window);
  const settled = Math.min(latestThird, Math.max(earliestThird, turnsBeforeThird / ownHz));
  const late = { from: Math.max(settled, sound.window.from), to: sound.window.to };
  const twelfth = upper(3, reachOfThird, late);
  const doubleOctave = upper(4, reachOfThird, late);
  const taken = [fundamental, octave?.line, twelfth?.line, doubleOctave?.line];
  return {
    octave: octave?.partial ?? null,
    octaveRival: octave?.rival ?? null,
    ...strongerThird(twelfth, doubleOctave),
    taken: taken.filter((line) => line !== undefined && line !== null),
  };
}

/** A measured line as a partial whose place is `targetHz`. */
export function partialOf(line: MeasuredLine, targetHz: number): MeasuredPartial {
  const fitted = (1200 / Math.LN2) * (line.sigmaHz / line.hz);
  return {
    hz: hertz(line.hz),
    window: { from: seconds(line.from), to: seconds(line.to) },
    cents: centsBetween(targetHz, line.hz),
    sigmaCents: cents(Math.hypot(fitted, (exchangeCents * line.hz) / 1000)),
    decaySeconds: seconds(line.decaySeconds),
    levelDb: decibels(dbOfAmplitude(line.amplitude, 1e-9)),
  };
}

function strongerThird(
  twelfth: MeasuredUpper | null,
  doubleOctave: MeasuredUpper | null,
): { readonly third: ThirdPartial | null; readonly thirdRival: UpperPartial | null } {
  const isTwelfth =
    twelfth && (!doubleOctave || twelfth.partial.levelDb > doubleOctave.partial.levelDb);
  const stronger = isTwelfth ? twelfth : doubleOctave;
  if (!stronger) return { third: null, thirdRival: null };
  const kind = isTwelfth ? 'twelfth' : 'double-octave';
  return { third: { kind, ...stronger.partial }, thirdRival: stronger.rival };
}

function strongestNear(
  lines: readonly SpectralLine[],
  hz: number,
  reach: number,
): SpectralLine | null {
  return lines.find((line) => Math.abs(centsBetween(hz, line.hz)) <= reach) ?? null;
}
