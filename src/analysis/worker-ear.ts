// The page's side of the analysis thread: asks, listens, and starts it again once if it dies.
import type { CutSound } from '../domain/measurement/cut-sound';
import type { Heard, ListeningContext } from '../domain/measurement/strike';
import type { Ear, EarState } from '../domain/ports/ear-port';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import type { Seconds } from '../domain/tuning/units';
import type { FromEarWorker, ToEarWorker } from './session/protocol';
import type { ThreadWatch } from './thread-watch';

/** A thread that has not answered after this time is taken for dead, ms (chosen, no source). */
const helloTimeout = 8000;
/** How many threads are started again unasked before the user has to act (chosen, no source). */
const restartLimit = 1;

/** Where sound comes from: a `port` cannot be handed to a second thread, the other sources can begin again. */
type Source =
  | { readonly kind: 'none' }
  | { readonly kind: 'fed'; readonly sampleRate: number }
  | { readonly kind: 'port' };

export class WorkerEar implements Ear {
  readonly #heard = new Set<(heard: Heard) => void>();
  readonly #level = new Set<(levelDb: number) => void>();
  readonly #states = new Set<(state: EarState) => void>();
  readonly #pending = new Map<number, (sound: CutSound | null) => void>();
  #state: EarState = { kind: 'ready' };
  /** Null: it died too often. The next `begin` or `attach`, which follows a tap, tries again. */
  #worker: Worker | null;
  #helloTimer: ReturnType<typeof setTimeout> | undefined;
  #watch: ThreadWatch | null = null;
  #context: ListeningContext | null = null;
  #source: Source = { kind: 'none' };
  /** The thread was replaced while a microphone was attached: nothing is heard before the next start. */
  #isDeaf = false;
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
    this.#start({ kind: 'fed', sampleRate });
    this.#post({ type: 'begin', sampleRate });
  }

  /** From now on sound at this rate (Hz) comes through `port`, as SoundBlocks. */
  attach(port: MessagePort, sampleRate: number): void {
    this.#start({ kind: 'port' });
    this.#post({ type: 'port', port, sampleRate }, [port]);
  }

  feed(samples: Float32Array<ArrayBuffer>): void {
    this.#post({ type: 'samples', samples }, [samples.buffer]);
  }

  /** Null too when the thread dies. */
  cut(from: Seconds, length: Seconds): Promise<CutSound | null> {
    if (!this.#worker) return Promise.resolve(null);
    const ticket = ++this.#tickets;
    return new Promise((resolve) => {
      this.#pending.set(ticket, resolve);
      this.#post({ type: 'cut', ticket, from, length });
    });
  }

  /** Also resolves when the thread dies; what had not been heard by then is lost, and the state says so. */
  finish(): Promise<void> {
    if (!this.#worker) return Promise.resolve();
    const ticket = ++this.#tickets;
    return new Promise((resolve) => {
      this.#pending.set(ticket, () => resolve());
      this.#post({ type: 'finish', ticket });
    });
  }

  /** A new listening: after a failure it begins on a living thread. */
  #start(source: Source): void {
    this.#source = source;
    this.#isDeaf = false;
    // A file is fed at once: a thread that is busy with it cannot answer, and `finish` waits for it anyway.
    if (source.kind === 'port') void this.#beginWatch();
    else this.#watch?.end();
    if (!this.#worker) {
      this.#restarts = 0;
      this.#worker = this.#open();
      this.#sendContext();
    } else if (this.#state.kind === 'failed' && this.#helloTimer === undefined) {
      this.#tell({ kind: 'ready' });
    }
  }

  /** It is loaded with the first listening; if it cannot be, everything works without it. */
  async #beginWatch(): Promise<void> {
    const loaded = await import('./thread-watch').catch(() => null);
    if (!loaded || this.#source.kind !== 'port') return;
    this.#watch ??= new loaded.ThreadWatch(
      () => this.#post({ type: 'hello' }),
      () => this.#fail('no answer'),
    );
    this.#watch.begin();
  }

  #open(): Worker {
    const worker = new Worker(new URL('./worker/analysis.worker.ts', import.meta.url), {
      type: 'module',
    });
    this.#helloTimer = setTimeout(() => this.#fail('no answer'), helloTimeout);
    worker.onmessage = ({ data }: MessageEvent<FromEarWorker>) => this.#handle(data);
    worker.onerror = (event) => {
      event.preventDefault();
      this.#fail(event.message || 'the thread could not be started');
    };
    worker.postMessage({ type: 'hello' } satisfies ToEarWorker);
    return worker;
  }

  #handle(message: FromEarWorker): void {
    this.#watch?.spoke();
    switch (message.type) {
      case 'hello':
        this.#stopWaiting();
        // A thread that took over cannot hear the microphone of the one that died: it must be opened anew.
        if (!this.#isDeaf && this.#state.kind !== 'ready') this.#tell({ kind: 'ready' });
        break;
      case 'heard':
        for (const listener of this.#heard) listener(message.heard);
        break;
      case 'level':
        for (const listener of this.#level) listener(message.levelDb);
        break;
      case 'finished':
        this.#resolve(message.ticket, null);
        break;
      case 'cut':
        this.#resolve(message.ticket, message.sound);
        break;
      default:
        message satisfies never;
    }
  }

  /** Everything that waits is let go; one new thread is tried; the user is told. */
  #fail(detail: string): void {
    this.#stopWaiting();
    this.#watch?.end();
    this.#isDeaf = this.#source.kind === 'port';
    if (this.#worker) {
      this.#worker.onmessage = null;
      this.#worker.onerror = null;
      this.#worker.terminate();
      this.#worker = null;
    }
    if (this.#restarts < restartLimit) {
      this.#restarts++;
      this.#worker = this.#open();
      this.#sendContext();
      if (this.#source.kind === 'fed') {
        this.#post({ type: 'begin', sampleRate: this.#source.sampleRate });
      }
    }
    this.#tell({ kind: 'failed', detail });
    for (const ticket of [...this.#pending.keys()]) this.#resolve(ticket, null);
  }

  #sendContext(): void {
    if (this.#context) this.#post({ type: 'context', context: this.#context });
  }

  #stopWaiting(): void {
    clearTimeout(this.#helloTimer);
    this.#helloTimer = undefined;
  }

  #resolve(ticket: number, sound: CutSound | null): void {
    this.#pending.get(ticket)?.(sound);
    this.#pending.delete(ticket);
  }

  #post(message: ToEarWorker, transfer: Transferable[] = []): void {
    this.#worker?.postMessage(message, transfer);
  }

  #tell(state: EarState): void {
    this.#state = state;
    for (const listener of this.#states) listener(state);
  }
}
