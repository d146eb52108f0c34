// The page's side of the analysis thread: asks, listens, and starts it again once if it dies.
import type { Heard, ListeningContext } from '../domain/measurement/strike';
import type { Ear, EarState, Unsubscribe } from '../domain/ports';
import type { FromWorker, ToWorker } from './protocol';

const helloTimeout = 8000;
const restartLimit = 1;

export class WorkerEar implements Ear {
  readonly #heard = new Set<(heard: Heard) => void>();
  readonly #level = new Set<(levelDb: number) => void>();
  readonly #states = new Set<(state: EarState) => void>();
  readonly #pending = new Map<number, () => void>();
  #state: EarState = { kind: 'ready' };
  #worker: Worker;
  #context: ListeningContext | null = null;
  #tickets = 0;
  #restarts = 0;

  constructor() {
    this.#worker = this.#open();
  }

  onHeard(listener: (heard: Heard) => void): Unsubscribe {
    this.#heard.add(listener);
    return () => this.#heard.delete(listener);
  }

  onLevel(listener: (levelDb: number) => void): Unsubscribe {
    this.#level.add(listener);
    return () => this.#level.delete(listener);
  }

  onState(listener: (state: EarState) => void): Unsubscribe {
    this.#states.add(listener);
    listener(this.#state);
    return () => this.#states.delete(listener);
  }

  setContext(context: ListeningContext): void {
    this.#context = context;
    this.#post({ type: 'context', context });
  }

  begin(sampleRate: number): void {
    this.#post({ type: 'begin', sampleRate });
  }

  /** From now on sound comes through `port`, as SoundBlocks. */
  attach(port: MessagePort, sampleRate: number): void {
    this.#post({ type: 'port', port, sampleRate }, [port]);
  }

  feed(samples: Float32Array<ArrayBuffer>): void {
    this.#post({ type: 'samples', samples }, [samples.buffer]);
  }

  finish(): Promise<void> {
    const ticket = ++this.#tickets;
    return new Promise((resolve) => {
      this.#pending.set(ticket, resolve);
      this.#post({ type: 'finish', ticket });
    });
  }

  #open(): Worker {
    const worker = new Worker(new URL('./worker/analysis.worker.ts', import.meta.url), {
      type: 'module',
    });
    const timeout = setTimeout(() => this.#fail('no answer'), helloTimeout);
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      switch (data.type) {
        case 'hello':
          clearTimeout(timeout);
          return this.#tell({ kind: 'ready' });
        case 'heard':
          for (const listener of this.#heard) listener(data.heard);
          return;
        case 'level':
          for (const listener of this.#level) listener(data.levelDb);
          return;
        case 'finished':
          return this.#resolve(data.ticket);
        default:
          return data satisfies never;
      }
    };
    worker.onerror = (event) => {
      clearTimeout(timeout);
      event.preventDefault();
      this.#fail(event.message);
    };
    worker.postMessage({ type: 'hello' } satisfies ToWorker);
    return worker;
  }

  /** Everything that waits is let go; one new thread is tried, then the user is told. */
  #fail(detail: string): void {
    this.#worker.terminate();
    for (const ticket of [...this.#pending.keys()]) this.#resolve(ticket);
    if (this.#restarts < restartLimit) {
      this.#restarts++;
      this.#worker = this.#open();
      if (this.#context) this.setContext(this.#context);
    }
    this.#tell({ kind: 'failed', detail });
  }

  #resolve(ticket: number): void {
    this.#pending.get(ticket)?.();
    this.#pending.delete(ticket);
  }

  #post(message: ToWorker, transfer: Transferable[] = []): void {
    this.#worker.postMessage(message, transfer);
  }

  #tell(state: EarState): void {
    this.#state = state;
    for (const listener of this.#states) listener(state);
  }
}
