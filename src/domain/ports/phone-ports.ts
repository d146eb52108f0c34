// What the app needs from the phone and the browser around it: screen, offline copy, clock, names for records.
import type { Instant } from '../tuning/units';
import type { Unsubscribe } from './unsubscribe';

/** Keeps the screen on while `on`; asks again by itself after the app was hidden. */
export interface ScreenLight {
  keepOn(on: boolean): void;
}

export type OfflineState =
  | { readonly kind: 'not-ready' }
  /** Everything the app needs is on the phone and this page is served from there. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'update-waiting' }
  | { readonly kind: 'unsupported' };

export interface AppUpdates {
  onState(listener: (state: OfflineState) => void): Unsubscribe;
  /** Apply the waiting update and reload. Call only when nothing is being measured. */
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
