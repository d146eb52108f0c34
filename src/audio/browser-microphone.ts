// The phone's microphone through an AudioWorklet. Recovery is always the same: close all, build anew.
import type { Heartbeat } from '../domain/measurement/sound-block';
import type { Microphone, MicrophoneState } from '../domain/ports/microphone-ports';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import { afterBlock, type Pulse, processingOf, stateAt, stateForRefusal } from './microphone-life';
import {
  askForMicrophone,
  type Capture,
  closeCapture,
  openCapture,
  stopTracks,
} from './open-capture';
import { SampleClock } from './sample-clock';

/** How often a running capture is looked at, ms (chosen, no source). */
const watchEvery = 150;

interface Running {
  readonly capture: Capture;
  /** Aborting it removes all listeners of this capture. */
  readonly over: AbortController;
  readonly watch: number;
}

export class BrowserMicrophone implements Microphone {
  readonly #listeners = new Set<(state: MicrophoneState) => void>();
  #state: MicrophoneState = { kind: 'idle' };
  #running: Running | null = null;
  /** A newer start or stop overrides an older one that is still waiting for the user. */
  #attempt = 0;

  /** `onPort` gets the port where blocks come out (SoundBlock) and their sample rate, at every start. */
  constructor(readonly onPort: (port: MessagePort, sampleRate: number) => void) {}

  onState(listener: (state: MicrophoneState) => void): Unsubscribe {
    this.#listeners.add(listener);
    listener(this.#state);
    return () => this.#listeners.delete(listener);
  }

  async start(): Promise<void> {
    const attempt = ++this.#attempt;
    await this.#close();
    if (attempt !== this.#attempt) return;
    this.#tell({ kind: 'asking' });
    try {
      const stream = await askForMicrophone();
      if (attempt !== this.#attempt) return stopTracks(stream);
      const capture = await openCapture(stream);
      if (attempt !== this.#attempt) return await closeCapture(capture);
      this.#run(capture, attempt);
    } catch (error) {
      if (attempt !== this.#attempt) return;
      await this.#close();
      this.#tell(stateForRefusal(error instanceof Error ? error.name : 'Error'));
    }
  }

  async stop(): Promise<void> {
    const attempt = ++this.#attempt;
    await this.#close();
    if (attempt === this.#attempt) this.#tell({ kind: 'idle' });
  }

  #run(capture: Capture, attempt: number): void {
    const { track, context, node } = capture;
    const over = new AbortController();
    const { signal } = over;
    const clock = new SampleClock(context.sampleRate);
    const startedAt = performance.now();
    let missed = false;
    let pulse: Pulse = {
      startedAt,
      lastBlockAt: null,
      lastSoundAt: startedAt,
      wasHidden: document.hidden,
      processing: processingOf(track.getSettings()),
      sampleRate: context.sampleRate,
    };
    const end = (state: MicrophoneState): void => {
      if (attempt !== this.#attempt) return;
      this.#attempt++;
      void this.#close();
      this.#tell(state);
    };
    // Another app or another device can change the processing, or take the device away without a word.
    const checkDevice = (): void => {
      if (track.readyState === 'ended') end({ kind: 'lost' });
      pulse = { ...pulse, processing: processingOf(track.getSettings()) };
    };
    const look = (): void => {
      const state = stateAt(pulse, performance.now());
      const stopped = state.kind === 'lost' || state.kind === 'interrupted';
      // Only when seen twice in a row: after the page was held up, the blocks that wait for it come right after this.
      if (stopped && missed) end(state);
      else if (!stopped) this.#tell(state);
      missed = stopped;
    };

    node.port.onmessage = ({ data }: MessageEvent<Heartbeat>) => {
      missed = false;
      pulse = afterBlock(pulse, data.peak, performance.now(), document.hidden);
      if (clock.isWrongAfter(data)) end({ kind: 'failed', why: 'wrong-rate' });
    };
    track.addEventListener('ended', () => end({ kind: 'lost' }), { signal });
    track.addEventListener('mute', () => end({ kind: 'interrupted' }), { signal });
    track.addEventListener('configurationchange', checkDevice, { signal });
    navigator.mediaDevices.addEventListener('devicechange', checkDevice, { signal });
    context.addEventListener(
      'statechange',
      () => {
        if (context.state !== 'running') end({ kind: 'interrupted' });
      },
      { signal },
    );
    document.addEventListener(
      'visibilitychange',
      () => {
        if (document.hidden) pulse = { ...pulse, wasHidden: true };
      },
      { signal },
    );
    this.#running = { capture, over, watch: window.setInterval(look, watchEvery) };
    this.onPort(capture.port, context.sampleRate);
    this.#tell({ kind: 'priming' });
    checkDevice();
  }

  async #close(): Promise<void> {
    const running = this.#running;
    this.#running = null;
    if (!running) return;
    window.clearInterval(running.watch);
    running.over.abort();
    await closeCapture(running.capture);
  }

  #tell(state: MicrophoneState): void {
    if (JSON.stringify(state) === JSON.stringify(this.#state)) return;
    this.#state = state;
    for (const listener of this.#listeners) listener(state);
  }
}
