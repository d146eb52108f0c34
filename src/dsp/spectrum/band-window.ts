// The part of a band that is measured.
import { type Band, leadSeconds } from './strike-spectrum';

/** A measuring window, seconds after the onset. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/** The samples of `band` that lie in `window`. */
export function windowOf(band: Band, window: Window): Band {
  const from = Math.max(0, Math.ceil((leadSeconds + window.from) * band.rate));
  const to = Math.min(band.count, Math.floor((leadSeconds + window.to) * band.rate));
  const count = Math.max(0, to - from);
  const [re, im] = [band.work.take(count), band.work.take(count)];
  for (let n = 0; n < count; n++) {
    re[n] = band.re[from + n];
    im[n] = band.im[from + n];
  }
  return { ...band, re, im, count };
}
