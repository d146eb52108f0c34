// Builds and takes apart the way from the microphone to the audio thread.
import { insecureError } from './microphone-life';
import workletUrl from './worklet/capture.worklet.ts?worker&url';

/** Some phones leave a start during a call pending for ever; it is given up after this time, ms (chosen, no source). */
const startTimeout = 5000;
/** Plain values, not `exact`: a phone that cannot switch one off must still be heard. */
const wanted: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
};

export interface Capture {
  readonly stream: MediaStream;
  readonly track: MediaStreamTrack;
  readonly context: AudioContext;
  /** Sends a Heartbeat to the page for each block. */
  readonly node: AudioWorkletNode;
  /** Where the blocks come out. */
  readonly port: MessagePort;
}

/** Asks for the microphone; rejects with a DOMException whose name says why. */
export async function askForMicrophone(): Promise<MediaStream> {
  const devices: MediaDevices | undefined = navigator.mediaDevices;
  if (!devices) throw new DOMException('the page did not come over https', insecureError);
  try {
    return await devices.getUserMedia({ audio: wanted });
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== 'OverconstrainedError') throw error;
    return devices.getUserMedia({ audio: true });
  }
}

/** Starts the sound of `stream` running to `port`. If it fails, nothing stays open. */
export async function openCapture(stream: MediaStream): Promise<Capture> {
  let context: AudioContext | null = null;
  try {
    const track = stream.getAudioTracks()[0];
    if (!track) throw new DOMException('no audio track', 'NotFoundError');
    // No sampleRate: some browsers refuse another rate than the device's, others lose samples.
    context = new AudioContext({ latencyHint: 'interactive' });
    await context.audioWorklet.addModule(workletUrl);
    await within(startTimeout, context.resume());
    const node = new AudioWorkletNode(context, 'capture', { channelCount: 1 });
    const channel = new MessageChannel();
    node.port.postMessage({ type: 'port', port: channel.port1 }, [channel.port1]);
    // Some browsers run only what leads to the loudspeaker; nothing may be heard from there.
    const silent = new GainNode(context, { gain: 0 });
    context.createMediaStreamSource(stream).connect(node).connect(silent);
    silent.connect(context.destination);
    return { stream, track, context, node, port: channel.port2 };
  } catch (error) {
    stopTracks(stream);
    if (context) await closeContext(context);
    throw error;
  }
}

/** Lets go of the microphone; never rejects. */
export async function closeCapture({ stream, context, node }: Capture): Promise<void> {
  node.port.onmessage = null;
  node.port.postMessage({ type: 'stop' });
  node.port.close();
  node.disconnect();
  stopTracks(stream);
  await closeContext(context);
}

/** Frees the microphone and puts out the phone's recording sign. */
export function stopTracks(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

async function closeContext(context: AudioContext): Promise<void> {
  try {
    if (context.state !== 'closed') await context.close();
  } catch {
    // It closed by itself in the meantime, which is what was wanted.
  }
}

async function within(limit: number, work: Promise<void>): Promise<void> {
  let timer: number | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = window.setTimeout(
      () => reject(new DOMException('the sound did not start', 'TimeoutError')),
      limit,
    );
  });
  try {
    await Promise.race([work, late]);
  } finally {
    window.clearTimeout(timer);
  }
}
