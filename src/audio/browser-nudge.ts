// A short buzz of the phone, or a short beep.
import type { Nudge } from '../domain/ports/sound-ports';
import { playShortTone } from './short-tone';

/** Long enough to be felt in a pocket (common practice, no source). */
const buzzMs = 80;
/** Above all notes and octaves of a pan, as in `BrowserAnnouncer`; half a tone lower, to be told from "next note". */
const settledTone = { hz: 3400, level: 0.2, seconds: 0.06 };

export class BrowserNudge implements Nudge {
  #context: AudioContext | null = null;

  buzz(): Promise<void> {
    // Some phones have no such thing, and before the first tap none of them does it.
    if (!('vibrate' in navigator) || !navigator.vibrate(buzzMs)) return Promise.resolve();
    return new Promise((over) => setTimeout(over, buzzMs));
  }

  async tone(): Promise<void> {
    try {
      this.#context ??= new AudioContext();
      const context = this.#context;
      await context.resume();
      await playShortTone(context, context.currentTime, settledTone);
    } catch {
      // No sound on this phone: the screen says it all. The next tone tries again.
      this.#context = null;
    }
  }
}
