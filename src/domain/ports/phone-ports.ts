// What the app needs from the phone and the browser around it: screen, offline copy, clock, names for records.
import type { Instant } from '../tuning/units';
import type { Unsubscribe } from './unsubscribe';

/** Keeps the screen on while `on`; asks again by itself after the app was hidden. */
export interface ScreenLight {
  keepOn(on: boolean): void;
}

export type OfflineState =
  | {
      /** `ready`: all files of the app are on the phone, checked, and this page is served from there. */
      readonly kind: 'not-ready' | 'ready';
      /** The network gave something else than the app's files when they were fetched last: nothing was changed. */
      readonly wrongAnswer: boolean;
    }
  | {
      readonly kind: 'update-waiting';
      /** It was asked for while some window was measuring, and was not put in place. */
      readonly isMeasured: boolean;
    }
  | { readonly kind: 'unsupported' };

export interface AppUpdates {
  onState(listener: (state: OfflineState) => void): Unsubscribe;
  /** Apply the waiting update and reload, unless some window of the app is measuring. */
  apply(): void;
}

export interface Clock {
  now(): Instant;
}

/** Makes names for new records that no other phone will ever make. */
export interface Identities {
  next(): string;
}

/** Puts what is on the screen on paper, or into a PDF file: the phone asks which. */
export interface Printer {
  print(): void;
}
