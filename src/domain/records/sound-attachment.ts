// The kept sound of a reading: WAV, one channel, 16 bit.
import type { CutSound } from '../measurement/cut-sound';
import type { Instant } from '../tuning/units';
import type { Attachment, AttachmentId, PanId } from './rack-records';

const headerLength = 44;
const fullScale = 32767;

export interface NewAttachment {
  readonly id: AttachmentId;
  readonly pan: PanId;
  readonly at: Instant;
}

/** A sound as a file (RIFF WAVE, PCM 16 bit, Microsoft/IBM 1991) beside the records. */
export function soundAttachment(sound: CutSound, { id, pan, at }: NewAttachment): Attachment {
  const bytes = wavOf(sound);
  return { shape: 1, id, pan, at, kind: 'sound', type: 'audio/wav', bytes };
}

function wavOf({ samples, sampleRate }: CutSound): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(headerLength + 2 * samples.length);
  const view = new DataView(bytes.buffer);
  const text = (at: number, letters: string): void => {
    for (let k = 0; k < letters.length; k++) view.setUint8(at + k, letters.charCodeAt(k));
  };
  text(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 2 * sampleRate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((sample, k) => {
    const limited = Math.max(-1, Math.min(1, sample));
    view.setInt16(headerLength + 2 * k, Math.round(limited * fullScale), true);
  });
  return bytes;
}
