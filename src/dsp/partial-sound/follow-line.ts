// Follows the glide of a line, so that the filter around it can stay narrow.
import { filterFor, type LineTrack, trackLine, trackStep } from './line-track';

/**
 * The course is smoothed over this time to either side, s: a glide lasts about 0.1 s (this and the next two: chosen, no
 * source).
 */
const smoothSeconds = 0.02;
/** Where the line is weaker than this against its strongest moment, its phase tells nothing, dB. */
const faintDb = -40;
/** Largest distance of the course from the line, as part of the distance to the next partial. */
const farthestPart = 0.2;

/** One moment of a line's course. */
export interface CourseMoment {
  /** Since the strike, s. */
  readonly at: number;
  readonly hz: number;
  /** Amplitude of the line, linear. */
  readonly amplitude: number;
}

/**
 * The line near `hz` along its own glide, `length` s of it from sample `onset` on; `partialHz` and `otherHz` as in
 * `filterFor`.
 */
export function followLine(
  samples: Float32Array,
  rate: number,
  onset: number,
  hz: number,
  length: number,
  partialHz: number,
  otherHz: number,
): LineTrack {
  const still = new Float64Array(Math.max(2, Math.floor(length / trackStep)));
  const first = trackLine(samples, rate, onset, hz, still, filterFor(partialHz, Infinity));
  const course = frequenciesOf(first);
  const turns = new Float64Array(still.length);
  let sum = 0;
  for (let point = 0; point < turns.length; point++) {
    turns[point] = sum;
    const away = course[point] - hz;
    const most = farthestPart * partialHz;
    sum += Math.max(-most, Math.min(most, away)) * trackStep;
  }
  return trackLine(samples, rate, onset, hz, turns, filterFor(partialHz, otherHz));
}

/** Frequency of the line at each point, Hz: a mean over the moments around it, weighed by their energy. */
export function frequenciesOf({ hz, turns, re, im }: LineTrack): Float64Array {
  const count = turns.length;
  const across = new Float64Array(count);
  const along = new Float64Array(count);
  let loudest = 0;
  for (let n = 1; n < count; n++) {
    const [a, b, c, d] = [re[n], im[n], re[n - 1], im[n - 1]];
    const turn = 2 * Math.PI * (turns[n] - turns[n - 1]);
    const real = a * c + b * d;
    const imaginary = b * c - a * d;
    along[n] = real * Math.cos(turn) - imaginary * Math.sin(turn);
    across[n] = real * Math.sin(turn) + imaginary * Math.cos(turn);
    loudest = Math.max(loudest, a * a + b * b);
  }
  const faint = loudest * 10 ** (faintDb / 10);
  const reach = Math.round(smoothSeconds / trackStep);
  return Float64Array.from(turns, (_, point) => {
    let real = 0;
    let imaginary = 0;
    // As much before as after: at the strike itself there is only what comes.
    const near = Math.max(3, Math.min(reach, count - 1 - point));
    for (let n = Math.max(1, point - near); n <= Math.min(count - 1, point + near); n++) {
      real += along[n];
      imaginary += across[n];
    }
    const isFaint = Math.hypot(real, imaginary) < faint;
    return isFaint ? hz : hz + Math.atan2(imaginary, real) / (2 * Math.PI * trackStep);
  });
}

/** The course as it is drawn, one moment every `every` points. */
export function momentsOf(track: LineTrack, every: number): readonly CourseMoment[] {
  const course = frequenciesOf(track);
  const moments: CourseMoment[] = [];
  for (let n = 0; n < course.length; n += every) {
    moments.push({
      at: n * trackStep,
      hz: course[n],
      amplitude: Math.hypot(track.re[n], track.im[n]),
    });
  }
  return moments;
}
