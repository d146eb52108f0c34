// Strokes inside the sound of a struck note that no onset gave away: short rises of several octaves at once.
// Limits that name no count of strikes are chosen, no source.
import { dbOfPower, powerOfDb } from '../../domain/numbers/decibel-levels';

/** Energies of octave bands in the newest steps; `energy(band, step)` with steps counted from the first ever. */
export interface BandCourse {
  readonly centres: readonly number[];
  readonly stepSeconds: number;
  energy(band: number, step: number): number;
  /** Energy of the room's own noise in a band. */
  room(band: number): number;
}

export interface Restroke {
  /** Step in which it begins. */
  readonly step: number;
  /** Rises of all bands together, dB. */
  readonly riseDb: number;
}

/** Lower bands answer too slowly, Hz. */
const lowestBand = 300;
/** Energies are compared over this time, s, and over this many periods of a band, if that is longer. */
const spanSeconds = 0.008;
const periodsInSpan = 2.2;
/** A rise counts over the loudest span of this time before it, s: beats rise more slowly. */
const beforeSeconds = 0.03;
/** A note's own attack and most of its bloom are over by then, s. */
const earliestSeconds = 0.065;
/**
 * A band counts only if it carries sound: this much of its own first energy, of that of all bands, and of the room's.
 */
const ofOwn = 0.15;
const ofAll = 0.0005;
const ofRoom = 12;
/** The share of its own first energy that is needed falls as the note fades, dB/s. */
const ownFall = 25;
/** The first energy is taken between these times, s. */
const firstFrom = 0.03;
const firstTo = 0.09;
/** No band counts more than this, dB. */
const mostOfBand = 9;
/** Rises closer together than this are one stroke, s. */
const apartSeconds = 0.05;

/**
 * A rise like this is another stroke, dB, and so are the largest three together, the first of which may then be smaller.
 * Single strikes reach 9.2 and 16.9 (330 seeded scenes and the practice pan) or, struck into what still rings, 9.1 and
 * 21.2 (116 on leads as hard as scenes); real recordings 2.4.
 */
export const sureRestrokeDb = 10.5;
const sureOfOneDb = 7.5;
const sureOfThreeDb = 23;

/** Whether rises (dB) inside the sound of one strike are those of further strokes. */
export function areRestrokes(risesDb: readonly number[]): boolean {
  const [first = 0, second = 0, third = 0] = risesDb.toSorted((a, b) => b - a);
  return (
    first >= sureRestrokeDb || (first >= sureOfOneDb && first + second + third >= sureOfThreeDb)
  );
}

/** Strokes of at least `leastDb` after the onset in step `onset` and before step `end`, in their order. */
export function restrokesIn(
  course: BandCourse,
  onset: number,
  end: number,
  leastDb: number,
): readonly Restroke[] {
  const bands = askedBands(course, onset);
  const first = onset + stepsIn(course, earliestSeconds);
  const apart = stepsIn(course, apartSeconds);
  const found: Restroke[] = [];
  for (let step = first; step + longestSpan(bands) <= end; step++) {
    const riseDb = riseAt(course, bands, step);
    if (riseDb < leastDb) continue;
    const last = found.at(-1);
    if (!last || step - last.step >= apart) found.push({ step, riseDb });
    else if (riseDb > last.riseDb) found[found.length - 1] = { step, riseDb };
  }
  return found;
}

/** Rises of all `bands` together at the beginning of `step`, dB; needs `longestSpan` steps from there on. */
export function riseAt(course: BandCourse, bands: readonly AskedBand[], step: number): number {
  const backs = stepsIn(course, beforeSeconds);
  let riseDb = 0;
  for (const { band, span, own, rest, onset } of bands) {
    const floor = rest + own * powerOfDb(-ownFall * (step - onset) * course.stepSeconds);
    let before = 0;
    for (let back = 0; back < backs; back++) {
      before = Math.max(before, mean(course, band, step - span - back, span));
    }
    const rise = dbOfPower((mean(course, band, step, span) + floor) / (before + floor), 1e-20);
    riseDb += Math.max(0, Math.min(mostOfBand, rise));
  }
  return riseDb;
}

export const longestSpan = (bands: readonly AskedBand[]): number =>
  bands.reduce((longest, { span }) => Math.max(longest, span), 0);

export interface AskedBand {
  readonly band: number;
  /** Steps over which energies are compared. */
  readonly span: number;
  /** Energies added to both sides, so that a band without sound does not count: one that fades from `onset` on, and the rest. */
  readonly own: number;
  readonly rest: number;
  readonly onset: number;
}

/** The bands in which strokes after the onset in step `onset` would show; needs 90 ms from there on. */
export function askedBands(course: BandCourse, onset: number): readonly AskedBand[] {
  const from = stepsIn(course, firstFrom);
  const first = course.centres.map((_, band) =>
    mean(course, band, onset + from, stepsIn(course, firstTo) - from),
  );
  const all = first.reduce((sum, energy) => sum + energy, 0);
  return course.centres.flatMap((hz, band) => {
    if (hz < lowestBand) return [];
    const span = stepsIn(course, Math.max(spanSeconds, periodsInSpan / hz));
    const own = ofOwn * first[band];
    const rest = ofRoom * course.room(band) + ofAll * all + 1e-20;
    return [{ band, span, own, rest, onset }];
  });
}

const stepsIn = ({ stepSeconds }: BandCourse, seconds: number): number =>
  Math.round(seconds / stepSeconds);

function mean(course: BandCourse, band: number, from: number, count: number): number {
  let sum = 0;
  for (let step = from; step < from + count; step++) sum += course.energy(band, step);
  return sum / count;
}
