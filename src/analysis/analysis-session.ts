// What the analysis thread does with each message; the worker itself is only a shell around it.
import type { SoundBlock } from '../domain/measurement/sound-block';
import type { Heard, ListeningContext } from '../domain/measurement/strike';
import { standardA4 } from '../domain/tuning/equal-temperament';
import { StrikeListener } from '../dsp/strike-listener';
import type { FromWorker, ToWorker } from './protocol';

/** Below every real microphone; keeps the level of exact zeros finite, linear. */
const lowestPeak = 1e-9;

export class AnalysisSession {
  #context: ListeningContext = { a4: standardA4, expected: null, notes: null };
  #listener: StrikeListener | null = null;
  #source: MessagePort | null = null;

  constructor(readonly post: (message: FromWorker) => void) {}

  /** Acts on one message of the page; answers and everything heard go out through `post`. */
  handle(message: ToWorker): void {
    switch (message.type) {
      case 'hello':
        this.post({ type: 'hello' });
        break;
      case 'context':
        this.#context = message.context;
        this.#listener?.setContext(message.context);
        break;
      case 'begin':
        this.#listenAnew(message.sampleRate);
        break;
      case 'port':
        this.#listenAnew(message.sampleRate);
        this.#readFrom(message.port);
        break;
      case 'samples':
        this.#report(this.#listener?.push(message.samples) ?? []);
        break;
      case 'finish':
        this.#report(this.#listener?.finish() ?? []);
        this.post({ type: 'finished', ticket: message.ticket });
        break;
      default:
        message satisfies never;
    }
  }

  #listenAnew(sampleRate: number): void {
    this.#source?.close();
    this.#source = null;
    this.#listener = new StrikeListener(sampleRate, this.#context);
  }

  #readFrom(port: MessagePort): void {
    this.#source = port;
    port.onmessage = ({ data: { samples, peak } }: MessageEvent<SoundBlock>) => {
      // Blocks that were on their way when another listening began belong to nobody.
      if (this.#source !== port) return;
      this.#report(this.#listener?.push(samples) ?? []);
      this.post({ type: 'level', levelDb: 20 * Math.log10(Math.max(peak, lowestPeak)) });
      port.postMessage(samples, [samples.buffer]);
    };
  }

  #report(heard: readonly Heard[]): void {
    for (const each of heard) this.post({ type: 'heard', heard: each });
  }
}
