import type { CutSound } from '../measurement/cut-sound';
import type { Heard, ListeningContext } from '../measurement/strike';
import type { Seconds } from '../tuning/units';
import type { Unsubscribe } from './unsubscribe';

export type EarState =
  | { readonly kind: 'ready' }
  | { readonly kind: 'failed'; readonly detail: string };

/** The analysis, on its own thread. */
export interface Ear {
  onHeard(listener: (heard: Heard) => void): Unsubscribe;
  /** Input level of the newest block, dB relative to full scale (for "is the microphone alive?"). */
  onLevel(listener: (levelDb: number) => void): Unsubscribe;
  onState(listener: (state: EarState) => void): Unsubscribe;
  setContext(context: ListeningContext): void;
  /** Start a new listening at this sample rate: forget all earlier sound. */
  begin(sampleRate: number): void;
  /** Samples −1…1, one channel; the array is transferred and unusable afterwards. */
  feed(samples: Float32Array<ArrayBuffer>): void;
  /**
   * The sound from `from` (s since listening began) on, `length` s of it, once all of it has been heard; null if
   * it is forgotten (a few seconds are remembered) or another listening has begun.
   */
  cut(from: Seconds, length: Seconds): Promise<CutSound | null>;
  /** No more sound will come: report what is still open. Resolves when all of it has been reported. */
  finish(): Promise<void>;
}
