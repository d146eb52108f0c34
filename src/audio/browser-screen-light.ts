// Keeps the screen on while something is listened to.
import type { ScreenLight } from '../domain/ports';

export class BrowserScreenLight implements ScreenLight {
  #wanted = false;
  #lock: WakeLockSentinel | null = null;

  constructor() {
    // The browser lets go of the lock whenever the app is hidden.
    document.addEventListener('visibilitychange', () => {
      if (!document.hidden) void this.#renew();
    });
  }

  keepOn(on: boolean): void {
    if (on === this.#wanted) return;
    this.#wanted = on;
    void this.#renew();
  }

  async #renew(): Promise<void> {
    try {
      if (!this.#wanted) {
        const lock = this.#lock;
        this.#lock = null;
        await lock?.release();
        return;
      }
      if (this.#lock && !this.#lock.released) return;
      this.#lock = (await navigator.wakeLock?.request('screen')) ?? null;
      if (!this.#wanted) await this.#lock?.release();
    } catch {
      // Low battery or an old browser: the screen follows the phone's own setting.
      this.#lock = null;
    }
  }
}
