// A strike that has begun and is not judged yet.
import type { Heard } from '../domain/measurement/strike';
import { seconds } from '../domain/tuning/units';

/** A stroke belongs to a roll if the one just before it was at most this much softer, dB (chosen, no source). */
const rollRange = 12;

export interface OpenStrike {
  readonly event: number;
  readonly onset: number;
  /** Of its first moments, the loudest. */
  levelDb: number;
  /** Level of the room before it, dB. */
  readonly roomDb: number;
  /** Level of the stroke just before, if it came that soon, dB: the sound then holds two. */
  readonly tooSoonAfterDb: number | null;
  /** It came so soon after a roll that it may be one of its last strokes. */
  readonly isAfterRoll: boolean;
  told: boolean;
}

/** Whether the stroke just before was so loud that this one belongs to its roll. */
export const isInRoll = ({ levelDb, tooSoonAfterDb }: OpenStrike): boolean =>
  tooSoonAfterDb !== null && tooSoonAfterDb > levelDb - rollRange;

/** The refusal of a strike whose sound holds several. */
export const tooFast = ({ event, onset }: OpenStrike, sampleRate: number): Heard => ({
  kind: 'refused',
  event,
  at: seconds(onset / sampleRate),
  reason: 'too-fast',
  note: null,
  candidates: [],
});
