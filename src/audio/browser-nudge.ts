// A short buzz of the phone, or a short beep.
import type { Nudge } from '../domain/ports/sound-ports';

/** Long enough to be felt in a pocket (common practice, no source). */
const buzzMs = 80;
/** Above all notes and octaves of a pan, as in `BrowserAnnouncer`; half a tone lower, to be told from "next note". */
const toneHz = 3400;
const toneSeconds = 0.06;
const toneLevel = 0.2;
const rampSeconds = 0.01;
/** A beep that is not over by then never began: no speaker, or the page was put to sleep. */
const longestToneMs = 1000;

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
      const at = context.currentTime;
      const gain = new GainNode(context, { gain: 0 });
      const source = new OscillatorNode(context, { frequency: toneHz });
      source.connect(gain).connect(context.destination);
      // Without a ramp the ends would click.
      gain.gain.setValueAtTime(0, at);
      gain.gain.linearRampToValueAtTime(toneLevel, at + rampSeconds);
      gain.gain.setValueAtTime(toneLevel, at + toneSeconds - rampSeconds);
      gain.gain.linearRampToValueAtTime(0, at + toneSeconds);
      await new Promise<void>((over) => {
        source.onended = () => over();
        source.start(at);
        source.stop(at + toneSeconds);
        setTimeout(over, longestToneMs);
      });
    } catch {
      // No sound on this phone: the screen says it all. The next tone tries again.
      this.#context = null;
    }
  }
}
