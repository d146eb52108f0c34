// One line of a strike as it swells and fades: complex samples along its own course, by a filter without delay.
import { lengthTimesWidth, symmetricLowPass } from './symmetric-low-pass';

/**
 * Time between the points of a track, s: they follow changes six times as fast as any that the filter lets through
 * (chosen, no source).
 */
export const trackStep = 0.001;
/**
 * Shortest half-length of the filter, s (chosen, no source): the splash of a strike's first moment reaches no further.
 */
const shortestHalf = 0.03;
/** The longest one, s (chosen, no source): it separates a line 21 Hz away. */
const longestHalf = 0.12;
/** Changes of a partial up to this pass, Hz: exchange of energy is 3 to 15 Hz fast (measured on recorded strikes). */
const widestPass = 15;
const narrowestPass = 5;
/**
 * At this fraction of the distance to another line the filter has stopped it, which leaves room for that line's own
 * glide.
 */
const stopPart = 0.9;

/** Both filters of one line; the longer one is used once as much time has passed since the strike as it is long. */
export interface TrackFilter {
  readonly shortHalf: number;
  readonly longHalf: number;
  readonly shortPass: number;
  readonly longPass: number;
}

/** A line along its course; the first point is the onset. */
export interface LineTrack {
  /** The frequency that `turns` is counted from, Hz. */
  readonly hz: number;
  /** Phase of the course beyond a steady line of `hz`, in turns. */
  readonly turns: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Filters for a line whose note's nearest other partial is `partialHz` away, and the nearest line of another note
 * `otherHz` (infinite: none). A line nearer than about 20 Hz beats with it and belongs to what is heard.
 */
export function filterFor(partialHz: number, otherHz: number): TrackFilter {
  const lengthFor = (away: number, pass: number): number =>
    lengthTimesWidth / Math.max(stopPart * away - pass, 1);
  const shortHalf = Math.max(
    shortestHalf,
    Math.min(longestHalf, lengthFor(partialHz, narrowestPass)),
  );
  const passAt = (half: number, away: number): number =>
    Math.max(narrowestPass, Math.min(widestPass, stopPart * away - lengthTimesWidth / half));
  const near = Math.min(partialHz, otherHz);
  const longHalf = Math.max(shortHalf, Math.min(longestHalf, lengthFor(near, narrowestPass)));
  return {
    shortHalf,
    longHalf,
    shortPass: passAt(shortHalf, partialHz),
    longPass: passAt(longHalf, near),
  };
}

/**
 * The line near `hz` in `samples` (at `rate` Hz, the strike at sample `onset`), along the course `turns` (one value a
 * step, as many as points are wanted). Linear in the samples. Each point is a mean over as much sound before as after it.
 */
export function trackLine(
  samples: Float32Array,
  rate: number,
  onset: number,
  hz: number,
  turns: Float64Array,
  filter: TrackFilter,
): LineTrack {
  const { cos, sin } = alongCourse(samples, rate, onset, hz, turns);
  const re = new Float64Array(turns.length);
  const im = new Float64Array(turns.length);
  const weightsOf = new Map<number, Float64Array>();
  for (let point = 0; point < turns.length; point++) {
    const half = halfAt(point * trackStep, filter);
    const weights = weightsOf.get(half) ?? symmetricLowPass(half, passOf(half, filter), rate);
    weightsOf.set(half, weights);
    const centre = onset + Math.round(point * trackStep * rate);
    const first = centre - (weights.length - 1) / 2;
    let a = 0;
    let b = 0;
    const to = Math.min(weights.length, cos.length - first);
    for (let n = Math.max(0, -first); n < to; n++) {
      const weight = weights[n];
      a += weight * cos[first + n];
      b += weight * sin[first + n];
    }
    re[point] = 2 * a;
    im[point] = 2 * b;
  }
  return { hz, turns, re, im };
}

/**
 * The filter grows with the time since the strike, in a few steps, so that it never reaches back to the strike's
 * splash.
 */
function halfAt(time: number, { shortHalf, longHalf }: TrackFilter): number {
  const steps = [0.02, 0.04, 0.06, 0.08].map((more) => shortHalf + more);
  const fitting = steps.filter((half) => half < longHalf && half <= time);
  return time >= longHalf ? longHalf : (fitting.at(-1) ?? shortHalf);
}

const passOf = (half: number, { shortHalf, longHalf, shortPass, longPass }: TrackFilter): number =>
  half <= shortHalf
    ? shortPass
    : longPass + ((shortPass - longPass) * (longHalf - half)) / (longHalf - shortHalf);

/** The samples turned back along the course: what follows it stands still. */
function alongCourse(
  samples: Float32Array,
  rate: number,
  onset: number,
  hz: number,
  turns: Float64Array,
): { readonly cos: Float64Array; readonly sin: Float64Array } {
  const cos = new Float64Array(samples.length);
  const sin = new Float64Array(samples.length);
  for (let n = 0; n < samples.length; n++) {
    const time = (n - onset) / rate;
    const angle = 2 * Math.PI * (hz * time + valueAt(turns, time / trackStep));
    const value = samples[n];
    cos[n] = value * Math.cos(angle);
    sin[n] = -value * Math.sin(angle);
  }
  return { cos, sin };
}

/** A straight line between the points; beyond the ends the last value holds. */
export function valueAt(values: Float64Array, place: number): number {
  const at = Math.max(0, Math.min(values.length - 1, place));
  const low = Math.floor(at);
  const from = values[low];
  return low === at ? from : from + (at - low) * (values[low + 1] - from);
}
