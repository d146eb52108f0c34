// Sums over the product of two lines, from which the normal equations of damped lines are put together.

/** Where each sum stands: of conj(a)·b alone, times t, times t², and times the glide's course g, g·t and g². */
export const moments = {
  re: 0,
  im: 1,
  timeRe: 2,
  timeIm: 3,
  squareRe: 4,
  squareIm: 5,
  glideRe: 6,
  glideIm: 7,
  glideTimeRe: 8,
  glideTimeIm: 9,
  glideSquare: 10,
} as const;
export const momentCount = 11;

/** Complex samples in two arrays. */
export interface ComplexSamples {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Fills `sums` up to those with t² with the sums over conj(a)·b; samples are `step` seconds apart. */
export function fillMoments(
  sums: Float64Array,
  { re: aRe, im: aIm }: ComplexSamples,
  { re: bRe, im: bIm }: ComplexSamples,
  count: number,
  step: number,
): void {
  let re = 0;
  let im = 0;
  let timeRe = 0;
  let timeIm = 0;
  let squareRe = 0;
  let squareIm = 0;
  for (let n = 0; n < count; n++) {
    const a = aRe[n];
    const b = aIm[n];
    const c = bRe[n];
    const d = bIm[n];
    const x = a * c + b * d;
    const y = a * d - b * c;
    const t = n * step;
    re += x;
    im += y;
    timeRe += x * t;
    timeIm += y * t;
    squareRe += x * t * t;
    squareIm += y * t * t;
  }
  sums[moments.re] = re;
  sums[moments.im] = im;
  sums[moments.timeRe] = timeRe;
  sums[moments.timeIm] = timeIm;
  sums[moments.squareRe] = squareRe;
  sums[moments.squareIm] = squareIm;
}

/** Fills the sums over conj(a)·b with the glide's course `glide`. */
export function fillGlideMoments(
  sums: Float64Array,
  { re: aRe, im: aIm }: ComplexSamples,
  { re: bRe, im: bIm }: ComplexSamples,
  glide: Float64Array,
  count: number,
  step: number,
): void {
  let glideRe = 0;
  let glideIm = 0;
  let timeRe = 0;
  let timeIm = 0;
  let square = 0;
  for (let n = 0; n < count; n++) {
    const a = aRe[n];
    const b = aIm[n];
    const c = bRe[n];
    const d = bIm[n];
    const g = glide[n];
    const x = (a * c + b * d) * g;
    const y = (a * d - b * c) * g;
    const t = n * step;
    glideRe += x;
    glideIm += y;
    timeRe += x * t;
    timeIm += y * t;
    square += x * g;
  }
  sums[moments.glideRe] = glideRe;
  sums[moments.glideIm] = glideIm;
  sums[moments.glideTimeRe] = timeRe;
  sums[moments.glideTimeIm] = timeIm;
  sums[moments.glideSquare] = square;
}
