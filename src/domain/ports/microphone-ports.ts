// The microphone: its states, and which window may use it.
import type { Unsubscribe } from './unsubscribe';

export type MicrophoneState =
  | { readonly kind: 'idle' }
  /** The permission question is on screen. */
  | { readonly kind: 'asking' }
  /** Granted; the first half second is thrown away and checked. */
  | { readonly kind: 'priming' }
  /** `processing`: phone processing that could not be switched off, in plain words ("noise suppression"). */
  | {
      readonly kind: 'listening';
      readonly processing: readonly string[];
      readonly sampleRate: number;
    }
  /** A call, another app or the lock screen took the sound away. */
  | { readonly kind: 'interrupted' }
  /** Granted and running, but nothing except exact zeros arrives. */
  | { readonly kind: 'silent' }
  /** Blocks stopped arriving, or the device was unplugged. */
  | { readonly kind: 'lost' }
  | { readonly kind: 'denied' }
  | { readonly kind: 'absent' }
  | { readonly kind: 'busy' }
  /** Another window of the app listens. */
  | { readonly kind: 'other-window' }
  | { readonly kind: 'failed'; readonly why: MicrophoneFailure };

/**
 * `insecure`: the page did not come over https, and browsers give such pages no microphone.
 * `wrong-rate`: samples come faster or slower than the phone says, so every pitch would be wrong.
 */
export type MicrophoneFailure = 'insecure' | 'wrong-rate' | 'unknown';

/** The phone's microphone. Blocks go straight to the analysis; the page only sees state and level. */
export interface Microphone {
  onState(listener: (state: MicrophoneState) => void): Unsubscribe;
  /** Must be called inside a tap. Stops and rebuilds everything if it was already running. */
  start(): Promise<void>;
  stop(): Promise<void>;
}

/** The microphone belongs to one window of the app at a time. */
export interface MicrophoneTurn {
  /** Takes it for this window until `release`; taking it twice is taking it once. */
  take(): Promise<'ours' | 'other-window'>;
  release(): void;
}
