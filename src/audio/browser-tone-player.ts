// Plays one sound at a time, and knows when it is over.
import type { CutSound } from '../domain/measurement/cut-sound';
import type { TonePlayer } from '../domain/ports/sound-ports';
import type { Hertz } from '../domain/tuning/units';
import { heldAmplitude } from '../dsp/partial-sound/equal-loudness';

/**
 * A sound that is not over this long after its end never began, ms (chosen, no source): no speaker, or the page was put
 * to sleep.
 */
const graceMs = 1500;
/** A held tone fades in and out with this time constant, s (chosen, no source). */
const softSeconds = 0.03;

export class BrowserTonePlayer implements TonePlayer {
  #context: AudioContext | null = null;
  #end: () => void = () => undefined;

  play({ samples, sampleRate }: CutSound): Promise<void> {
    this.stop();
    if (samples.length === 0) return Promise.resolve();
    return new Promise((resolve) => {
      try {
        this.#context ??= new AudioContext();
        const context = this.#context;
        const buffer = context.createBuffer(1, samples.length, sampleRate);
        buffer.copyToChannel(samples, 0);
        const source = new AudioBufferSourceNode(context, { buffer });
        const timer = setTimeout(() => this.stop(), (1000 * samples.length) / sampleRate + graceMs);
        this.#end = () => {
          clearTimeout(timer);
          this.#end = () => undefined;
          source.onended = null;
          source.disconnect();
          resolve();
        };
        source.onended = () => this.#end();
        source.connect(context.destination);
        source.start();
        context.resume().catch(() => this.#end());
      } catch {
        // A phone that cannot play shows the picture all the same.
        this.#context = null;
        resolve();
      }
    });
  }

  hold(hz: Hertz): Promise<void> {
    this.stop();
    return new Promise((resolve) => {
      try {
        this.#context ??= new AudioContext();
        const context = this.#context;
        const tone = new OscillatorNode(context, { frequency: hz });
        const volume = new GainNode(context, { gain: 0 });
        tone.connect(volume).connect(context.destination);
        volume.gain.setTargetAtTime(heldAmplitude(hz), context.currentTime, softSeconds);
        tone.start();
        this.#end = () => {
          this.#end = () => undefined;
          const now = context.currentTime;
          volume.gain.cancelScheduledValues(now);
          volume.gain.setTargetAtTime(0, now, softSeconds);
          tone.stop(now + 8 * softSeconds);
          resolve();
        };
        context.resume().catch(() => this.#end());
      } catch {
        // As in `play`.
        this.#context = null;
        resolve();
      }
    });
  }

  stop(): void {
    this.#end();
  }
}
