import { type Seconds, seconds } from '../tuning/units';

/** A stretch of what was heard, one channel, −1…1. */
export interface CutSound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** How much of a strike is kept, from shortly before it on, s (this and the next: chosen, no source). */
export const cutSeconds = seconds(1);
const beforeStrike = 0.03;

/** Where the kept sound of a strike at `at` begins; both s since listening began. */
export const cutFrom = (at: Seconds): Seconds => seconds(Math.max(0, at - beforeStrike));
