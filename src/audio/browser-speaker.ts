// The phone's speaker.
import type { Speaker } from '../domain/ports/sound-ports';

export class BrowserSpeaker implements Speaker {
  #context: AudioContext | null = null;

  play(samples: Float32Array<ArrayBuffer>, sampleRate: number): void {
    try {
      this.#context ??= new AudioContext();
      const context = this.#context;
      const buffer = context.createBuffer(1, samples.length, sampleRate);
      buffer.copyToChannel(samples, 0);
      const source = new AudioBufferSourceNode(context, { buffer });
      source.connect(context.destination);
      source.start();
      context.resume().catch(() => this.#giveUp(context));
    } catch {
      this.#giveUp(this.#context);
    }
  }

  /** Without sound the practice pan still shows its reading; the next strike tries again with a new context. */
  #giveUp(context: AudioContext | null): void {
    if (!context || this.#context !== context) return;
    this.#context = null;
    // Phones allow only a few at a time. A context that cannot be closed is closed already.
    context.close().catch(() => undefined);
  }
}
