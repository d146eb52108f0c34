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
  return {
    ...band,
    re: band.re.subarray(from, Math.max(from, to)),
    im: band.im.subarray(from, Math.max(from, to)),
    count: Math.max(0, to - from),
  };
}
