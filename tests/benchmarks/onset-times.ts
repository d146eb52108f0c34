declare global {
  interface Window {
    /** When each strike reached the microphone, ms of performance.now(). */
    onsetTimes?: number[];
    /** Chromium only, hands out what the device delivers, past the app's own path. */
    MediaStreamTrackProcessor?: new (init: {
      track: MediaStreamTrack;
    }) => { readonly readable: ReadableStream<AudioData> };
  }
}

/**
 * Runs in the page before the app: watches a copy of the microphone's track and notes when a strike begins.
 * The note is late by the delivery of one buffer of the device at most (10 ms); the caller takes the earliest.
 */
export function recordOnsets(): void {
  const loud = 0.03;
  const quietSeconds = 0.25;
  const times: number[] = [];
  window.onsetTimes = times;

  const watch = async (track: MediaStreamTrack): Promise<void> => {
    if (!window.MediaStreamTrackProcessor) throw new Error('This browser cannot time the onsets.');
    const reader = new window.MediaStreamTrackProcessor({ track }).readable.getReader();
    let quiet = 0;
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      const arrived = performance.now();
      const { numberOfFrames: count, sampleRate } = next.value;
      const samples = new Float32Array(count);
      next.value.copyTo(samples, { planeIndex: 0, format: 'f32-planar' });
      next.value.close();
      samples.forEach((sample, n) => {
        if (Math.abs(sample) < loud) {
          quiet += 1;
          return;
        }
        if (quiet > quietSeconds * sampleRate) {
          times.push(arrived - ((count - n) / sampleRate) * 1000);
        }
        quiet = 0;
      });
    }
  };

  const devices = navigator.mediaDevices;
  const ask = devices.getUserMedia.bind(devices);
  devices.getUserMedia = async (wanted) => {
    const stream = await ask(wanted);
    for (const track of stream.getAudioTracks()) void watch(track.clone());
    return stream;
  };
}
