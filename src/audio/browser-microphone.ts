// The phone's microphone through an AudioWorklet. Recovery is always the same: close all, build anew.
import type { Heartbeat } from '../domain/measurement/sound-block';
import type { Microphone, MicrophoneState, Unsubscribe } from '../domain/ports';
import { type Pulse, stateAt, stateForRefusal } from './microphone-life';
import workletUrl from './worklet/capture.worklet.ts?worker&url';

const watchEvery = 150;
/** Plain values, not `exact`: a phone that cannot switch one off must still be heard. */
const wanted: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
};

interface Capture {
  readonly stream: MediaStream;
  readonly context: AudioContext;
  readonly node: AudioWorkletNode;
  readonly watch: number;
}

export class BrowserMicrophone implements Microphone {
  readonly #listeners = new Set<(state: MicrophoneState) => void>();
  #state: MicrophoneState = { kind: 'idle' };
  #capture: Capture | null = null;
  /** A newer start or stop makes an older one that still waits for the user worthless. */
  #attempt = 0;

  constructor(readonly onPort: (port: MessagePort, sampleRate: number) => void) {}

  onState(listener: (state: MicrophoneState) => void): Unsubscribe {
    this.#listeners.add(listener);
    listener(this.#state);
    return () => this.#listeners.delete(listener);
  }

  async start(): Promise<void> {
    const attempt = ++this.#attempt;
    await this.#close();
    this.#tell({ kind: 'asking' });
    try {
      const stream = await askForMicrophone();
      if (attempt !== this.#attempt) {
        stopTracks(stream);
        return;
      }
      await this.#build(stream, attempt);
    } catch (error) {
      if (attempt !== this.#attempt) return;
      await this.#close();
      const { name, message } = error instanceof Error ? error : new Error(String(error));
      this.#tell(stateForRefusal(name, message));
    }
  }

  async stop(): Promise<void> {
    this.#attempt++;
    await this.#close();
    this.#tell({ kind: 'idle' });
  }

  async #build(stream: MediaStream, attempt: number): Promise<void> {
    const track = stream.getAudioTracks()[0];
    if (!track) throw new DOMException('no audio track', 'NotFoundError');
    // No sampleRate: some browsers refuse another rate than the device's, others lose samples.
    const context = new AudioContext({ latencyHint: 'interactive' });
    try {
      await context.audioWorklet.addModule(workletUrl);
      await context.resume();
    } catch (error) {
      stopTracks(stream);
      await context.close();
      throw error;
    }
    if (attempt !== this.#attempt) {
      stopTracks(stream);
      await context.close();
      return;
    }
    const node = new AudioWorkletNode(context, 'capture', { channelCount: 1 });
    const channel = new MessageChannel();
    this.onPort(channel.port2, context.sampleRate);
    node.port.postMessage({ type: 'port', port: channel.port1 }, [channel.port1]);
    const silent = new GainNode(context, { gain: 0 });
    context.createMediaStreamSource(stream).connect(node).connect(silent);
    silent.connect(context.destination);
    this.#watch({ stream, context, node, track, attempt });
  }

  #watch({
    stream,
    context,
    node,
    track,
    attempt,
  }: {
    stream: MediaStream;
    context: AudioContext;
    node: AudioWorkletNode;
    track: MediaStreamTrack;
    attempt: number;
  }): void {
    const startedAt = performance.now();
    let pulse: Pulse = {
      startedAt,
      lastBlockAt: null,
      lastSoundAt: startedAt,
      processing: processingOf(track),
    };
    node.port.onmessage = (event: MessageEvent<Heartbeat>) => {
      const now = performance.now();
      const lastSoundAt = event.data.peak > 0 ? now : pulse.lastSoundAt;
      pulse = { ...pulse, lastBlockAt: now, lastSoundAt };
    };
    const end = (state: MicrophoneState): void => {
      if (attempt !== this.#attempt) return;
      this.#attempt++;
      void this.#close().then(() => this.#tell(state));
    };
    track.addEventListener('ended', () => end({ kind: 'lost' }));
    track.addEventListener('mute', () => end({ kind: 'interrupted' }));
    context.addEventListener('statechange', () => {
      if (context.state !== 'running') end({ kind: 'interrupted' });
    });
    const watch = window.setInterval(() => {
      const state = stateAt(pulse, performance.now());
      if (state.kind === 'lost') end(document.hidden ? { kind: 'interrupted' } : state);
      else this.#tell(state);
    }, watchEvery);
    this.#capture = { stream, context, node, watch };
    this.#tell({ kind: 'priming' });
  }

  async #close(): Promise<void> {
    const capture = this.#capture;
    this.#capture = null;
    if (!capture) return;
    window.clearInterval(capture.watch);
    capture.node.port.onmessage = null;
    capture.node.port.postMessage({ type: 'stop' });
    stopTracks(capture.stream);
    if (capture.context.state !== 'closed') await capture.context.close();
  }

  #tell(state: MicrophoneState): void {
    if (JSON.stringify(state) === JSON.stringify(this.#state)) return;
    this.#state = state;
    for (const listener of this.#listeners) listener(state);
  }
}

async function askForMicrophone(): Promise<MediaStream> {
  const devices: MediaDevices | undefined = navigator.mediaDevices;
  if (!devices) throw new Error('The microphone needs an https address.');
  try {
    return await devices.getUserMedia({ audio: wanted });
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== 'OverconstrainedError') throw error;
    return devices.getUserMedia({ audio: true });
  }
}

/** Processing that stayed on although it was asked off. Undefined is not "off", but nothing can be said of it. */
function processingOf(track: MediaStreamTrack): readonly string[] {
  const settings = track.getSettings();
  return [
    settings.echoCancellation === true ? 'echo cancellation' : '',
    settings.noiseSuppression === true ? 'noise suppression' : '',
    settings.autoGainControl === true ? 'gain control' : '',
  ].filter((name) => name !== '');
}

function stopTracks(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
