// Decisions about a running microphone, apart from the browser: what a refusal means, what silence means.
import type { MicrophoneState } from '../domain/ports';

/** No block for this long: the sound is lost, ms. */
export const lostAfter = 900;
/** Nothing but exact zeros for this long: something is switched off, ms. */
export const silentAfter = 2500;
/** After the first block this much is thrown away by watching only, ms. */
export const primingTime = 300;

/** What a failed request for the microphone means; `name` is the DOMException's name. */
export function stateForRefusal(name: string, detail: string): MicrophoneState {
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
    default:
      return { kind: 'failed', detail };
  }
}

/** What is known about a running capture; times in ms of one clock. */
export interface Pulse {
  readonly startedAt: number;
  readonly lastBlockAt: number | null;
  readonly lastSoundAt: number;
  readonly processing: readonly string[];
}

/** The state that a running capture is in at `now`. */
export function stateAt(pulse: Pulse, now: number): MicrophoneState {
  const lastBlock = pulse.lastBlockAt ?? pulse.startedAt;
  // The first block may take long on a slow phone.
  if (now - lastBlock > (pulse.lastBlockAt === null ? 4 * lostAfter : lostAfter)) {
    return { kind: 'lost' };
  }
  if (pulse.lastBlockAt === null || now - pulse.startedAt < primingTime) return { kind: 'priming' };
  if (now - pulse.lastSoundAt > silentAfter) return { kind: 'silent' };
  return { kind: 'listening', processing: pulse.processing };
}
