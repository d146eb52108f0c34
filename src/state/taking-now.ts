// Where the sound comes from at this moment, as it is kept with each reading.
import type { MicrophoneState } from '../domain/ports/microphone-ports';
import type { Taking } from '../domain/records/rack-records';

export type SoundFrom = 'none' | 'microphone' | 'file' | 'practice';

/** `rate`: sample rate of a file or of the practice pan; the microphone says its own. */
export function takingOf(
  from: SoundFrom,
  microphone: MicrophoneState,
  rate: number,
  gaps: number,
): Omit<Taking, 'appVersion'> {
  const isOpen = microphone.kind === 'listening';
  const isMicrophone = from === 'microphone';
  return {
    source: from === 'none' ? 'microphone' : from,
    sampleRate: isMicrophone && isOpen ? microphone.sampleRate : rate,
    processing: isMicrophone && isOpen ? microphone.processing : [],
    gaps,
  };
}
