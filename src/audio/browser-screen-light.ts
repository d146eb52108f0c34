// Keeps the screen on while something is listened to.
import type { ScreenLight } from '../domain/ports/phone-ports';

export class BrowserScreenLight implements ScreenLight {
  #wanted = false;
  #lock: WakeLockSentinel | null = null;
  /** One change at a time: two locks at once could never both be released. */
  #changes: Promise<void> = Promise.resolve();

  constructor() {
    // The browser lets go of the lock whenever the app is hidden.
    document.addEventListener('visibilitychange', () => {
      if (!document.hidden) this.#renew();
    });
  }

  keepOn(on: boolean): void {
    if (on === this.#wanted) return;
    this.#wanted = on;
    this.#renew();
  }

  #renew(): void {
    this.#changes = this.#changes.then(() => this.#change());
  }

  async #change(): Promise<void> {
    const held = this.#lock !== null && !this.#lock.released;
    if (held === this.#wanted) return;
    try {
      if (this.#wanted) {
        this.#lock = (await navigator.wakeLock?.request('screen')) ?? null;
      } else {
        await this.#lock?.release();
        this.#lock = null;
      }
    } catch {
      // Low battery or an old browser: the screen follows the phone's own setting.
      this.#lock = null;
    }
  }
}
