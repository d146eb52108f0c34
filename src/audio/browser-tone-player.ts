// Plays one sound at a time, and knows when it is over.
import type { CutSound } from '../domain/measurement/cut-sound';
import type { TonePlayer } from '../domain/ports/sound-ports';

/** A sound that is not over by so long after its end never began, ms: no speaker, or the page was put to sleep. */
const graceMs = 1500;

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

  stop(): void {
    this.#end();
  }
}
