// Decisions about a running microphone, apart from the browser: what a refusal means, what silence means.
// Times are chosen, no source.
import type { MicrophoneState } from '../domain/ports/microphone-ports';

/** No block for this long: the sound is lost, ms. */
const lostAfter = 900;
/** Nothing but exact zeros for this long: something is switched off, ms. */
const silentAfter = 2500;
/** For this long after the start, ms, the sound is only watched and thrown away. */
const primingTime = 300;

/** The name of our own error where the browser gives pages without https no microphone. */
export const insecureError = 'InsecureError';

/** What a failed start of the microphone means; `name` is the DOMException's name. */
export function stateForRefusal(name: string): MicrophoneState {
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return { kind: 'denied' };
    case 'NotFoundError':
    case 'OverconstrainedError':
      return { kind: 'absent' };
    case 'NotReadableError':
    case 'AbortError':
      return { kind: 'busy' };
    // A call is going on: the sound cannot be started (Web Audio, resume()) or never starts.
    case 'InvalidStateError':
    case 'TimeoutError':
      return { kind: 'interrupted' };
    case insecureError:
      return { kind: 'failed', why: 'insecure' };
    default:
      return { kind: 'failed', why: 'unknown' };
  }
}

/** What is known about a running capture; times in ms of one clock. */
export interface Pulse {
  readonly startedAt: number;
  readonly lastBlockAt: number | null;
  readonly lastSoundAt: number;
  /** The app has been out of sight at some time since the last block. */
  readonly wasHidden: boolean;
  readonly processing: readonly string[];
  readonly sampleRate: number;
}

/** The state that a running capture is in at `now`. */
export function stateAt(pulse: Pulse, now: number): MicrophoneState {
  const lastBlock = pulse.lastBlockAt ?? pulse.startedAt;
  // The first block may take long on a slow phone.
  if (now - lastBlock > (pulse.lastBlockAt === null ? 4 * lostAfter : lostAfter)) {
    return pulse.wasHidden ? { kind: 'interrupted' } : { kind: 'lost' };
  }
  if (pulse.lastBlockAt === null || now - pulse.startedAt < primingTime) return { kind: 'priming' };
  if (now - pulse.lastSoundAt > silentAfter) return { kind: 'silent' };
  return { kind: 'listening', processing: pulse.processing, sampleRate: pulse.sampleRate };
}

/** What is known after a block with this peak (0…1) arrived at `now`. */
export function afterBlock(pulse: Pulse, peak: number, now: number, hidden: boolean): Pulse {
  return {
    ...pulse,
    lastBlockAt: now,
    lastSoundAt: peak > 0 ? now : pulse.lastSoundAt,
    wasHidden: hidden,
  };
}

/** Processing that stayed on although it was asked to be off. Undefined does not mean "off", but tells nothing. */
export function processingOf(settings: MediaTrackSettings): readonly string[] {
  return [
    settings.echoCancellation === true ? 'echo cancellation' : '',
    settings.noiseSuppression === true ? 'noise suppression' : '',
    settings.autoGainControl === true ? 'gain control' : '',
  ].filter((name) => name !== '');
}
