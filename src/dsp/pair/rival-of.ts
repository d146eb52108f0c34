// Whether a mode beside a partial's strongest one is a second line, or what an exchange of energy leaves there.
import { dbOfPower } from '../../domain/numbers/decibel-levels';
import type { DampedMode } from './damped-modes';

/** Two lines of one partial lie at least and at most this far apart, Hz; at high partials up to this many cents. */
const nearestHz = 2;
const furthestHz = 12;
const furthestCents = 25;
/** … and at least this multiple of their summed widths (decay rate / 2π each): closer ones cannot be told from one line. */
const leastResolved = 0.8;
/** The second line is at most this much weaker than the first, at the window's start or over the whole of it, dB … */
const mostBelowDb = 12.5;
/** … and in its second half, above or below, dB: both last. */
const mostApartLateDb = 20;
const shortestSeconds = 0.05;
/**
 * An exchange of energy, 3 to 15 times a second, puts a sideband on either side of a line. A mode closer than
 * `exchangeHz` is taken for such a sideband if another mode lies near its mirror image (within `mirrorHz`, or
 * `mirrorPart` of the distance) and is at most `mirrorBelowDb` weaker.
 */
const exchangeHz = 16.5;
const mirrorHz = 1.2;
const mirrorPart = 0.15;
const mirrorBelowDb = 8;

/**
 * All limits were set on planted pairs (twoLineNote 1–200, scenes 1001–1200), on single lines that exchange energy
 * (twoLineNote 10001–10200, scenes 2001–2200 and 3001–3200) and on real strikes.
 *
 * Of `modes` (strongest first) the second line beside `main`, or null; `seconds`: the window's
 * length, `hz`: where.
 */
export function rivalOf(
  main: DampedMode,
  modes: readonly DampedMode[],
  { seconds, hz }: { readonly seconds: number; readonly hz: number },
): DampedMode | null {
  const furthest = Math.max(furthestHz, hz * (2 ** (furthestCents / 1200) - 1));
  const isSecond = (mode: DampedMode): boolean => {
    const apart = Math.abs(mode.offsetHz - main.offsetHz);
    const widths = (main.decayRate + mode.decayRate) / (2 * Math.PI);
    const belowDb = Math.min(
      decibel(main.energy / mode.energy),
      2 * decibel(main.amplitude / mode.amplitude),
    );
    const lateDb = decibel(lateEnergy(main, seconds) / lateEnergy(mode, seconds));
    return (
      mode !== main &&
      apart > Math.max(nearestHz, leastResolved * widths) &&
      apart < furthest &&
      belowDb < mostBelowDb &&
      Math.abs(lateDb) < mostApartLateDb &&
      lasts(mode) &&
      !isMirrored(mode)
    );
  };
  const isMirrored = (mode: DampedMode): boolean => {
    const apart = mode.offsetHz - main.offsetHz;
    const near = Math.max(mirrorHz, mirrorPart * Math.abs(apart));
    return (
      Math.abs(apart) < exchangeHz &&
      modes.some(
        (other) =>
          other !== main &&
          other !== mode &&
          Math.abs(other.offsetHz - (main.offsetHz - apart)) < near &&
          decibel(mode.energy / other.energy) < mirrorBelowDb,
      )
    );
  };
  return lasts(main) ? (modes.find(isSecond) ?? null) : null;
}

/** The ratio of two energies, dB; anything below 10⁻¹² counts as that. */
const decibel = (ratio: number): number => dbOfPower(ratio, 1e-12);
const lasts = ({ decayRate }: DampedMode): boolean =>
  decayRate > -1 && decayRate * shortestSeconds < 1;
/** Energy in the second half of the window. */
export const lateEnergy = ({ energy, decayRate }: DampedMode, seconds: number): number =>
  energy / (1 + Math.exp(decayRate * seconds));
