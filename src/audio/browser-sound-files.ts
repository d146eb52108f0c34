// Opens sound files: WAV as it is, everything else through the browser's decoder.
import type { OpenSoundResult, SoundFiles } from '../domain/ports/sound-ports';
import { secondsOf } from './seconds-of-sound';

/** Longer files are refused, s (chosen, no source). */
const longestSeconds = 600;
/** The decoder resamples to this rate (chosen, the usual one). */
const decodedRate = 48000;
/** No file of ten minutes is larger, bytes: 96 kHz, two channels, 24 bits, without compression. */
const largest = longestSeconds * 96_000 * 2 * 3;
/** The same for files that the browser decodes, bytes: the most that lossless ones of 16 bits at 48 kHz come to. */
const largestCompressed = longestSeconds * 48_000 * 2 * 2;
/** Largest file whose length the browser cannot tell, bytes: half an hour at the 9 kb/s of a bad telephone. */
const largestUntold = 2_000_000;

export class BrowserSoundFiles implements SoundFiles {
  async open(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<OpenSoundResult> {
    if (file instanceof Blob && file.size > largest) return { kind: 'unreadable', why: 'too-long' };
    let bytes: ArrayBuffer;
    try {
      bytes = await file.arrayBuffer();
    } catch {
      // The file was moved or is not allowed any more: to the user it is no readable sound.
      return { kind: 'unreadable', why: 'not-sound' };
    }
    if (bytes.byteLength === 0) return { kind: 'unreadable', why: 'empty' };
    const wav = await wavOf(bytes);
    if (wav) return opened(wav.samples, wav.sampleRate, false);
    // The decoder unpacks all of a file at once: two hours of it would take gigabytes.
    const seconds = await secondsOf(file instanceof Blob ? file : new Blob([bytes]));
    const most = seconds === null ? largestUntold : largestCompressed;
    if ((seconds ?? 0) > longestSeconds || bytes.byteLength > most) {
      return { kind: 'unreadable', why: 'too-long' };
    }
    try {
      const decoder = new OfflineAudioContext(1, 1, decodedRate);
      const decoded = await decoder.decodeAudioData(bytes);
      return opened(meanOfChannels(decoded), decoded.sampleRate, true);
    } catch {
      return { kind: 'unreadable', why: 'not-sound' };
    }
  }
}

/** The samples of a WAV file as they are; null if it is none that can be read here. */
async function wavOf(bytes: ArrayBuffer) {
  try {
    const { readWav } = await import('../dsp/read-wav');
    const wav = readWav(bytes);
    return wav.kind === 'wav' ? wav : null;
  } catch {
    // That part of the app could not be loaded: the browser's decoder reads such files too, at its own rate.
    return null;
  }
}

function opened(
  samples: Float32Array<ArrayBuffer>,
  sampleRate: number,
  resampled: boolean,
): OpenSoundResult {
  if (samples.length > longestSeconds * sampleRate) return { kind: 'unreadable', why: 'too-long' };
  return { kind: 'opened', sound: { samples, sampleRate, resampled } };
}

function meanOfChannels(buffer: AudioBuffer): Float32Array<ArrayBuffer> {
  const mean = new Float32Array(buffer.length);
  for (let channel = 0; channel < buffer.numberOfChannels; channel++) {
    buffer.getChannelData(channel).forEach((value, n) => {
      mean[n] = (mean[n] ?? 0) + value / buffer.numberOfChannels;
    });
  }
  return mean;
}
