// What the readout of the bench shows: blows between strikes take nothing away, and after them a reading begins anew.
import type { Heard } from '../../domain/measurement/strike';
import type { Reading } from '../../domain/reading/reading';
import { phaseAfter, type ReadoutPhase, readingOf } from '../listening/readout-phase';

/** A reading, shown as the readout shows it. */
export const phaseOf = (reading: Reading | null): ReadoutPhase =>
  reading === null
    ? { kind: 'listening' }
    : reading.settled
      ? { kind: 'settled', reading }
      : { kind: 'heard', reading, before: null };

/**
 * The phase after something was heard. `isNew`: the next strike begins a reading, because blows have fallen since
 * the last one.
 */
export function benchPhaseAfter(phase: ReadoutPhase, heard: Heard, isNew: boolean): ReadoutPhase {
  switch (heard.kind) {
    case 'strike':
      return phaseAfter(isNew ? { kind: 'listening' } : phase, heard);
    case 'refused':
      return phaseAfter(phase, heard);
    case 'knock':
      return phaseWithout(phase, heard.event);
  }
}

/** The phase before a first look at something that turned out to be a blow. */
function phaseWithout(phase: ReadoutPhase, event: number): ReadoutPhase {
  const reading = readingOf(phase);
  if (phase.kind === 'idle' || phase.kind === 'listening' || reading === null) return phase;
  const wasLookedAt = reading.heard.some((strike) => strike.event === event);
  if (!wasLookedAt) return phaseOf(reading);
  const at = reading.heard.find((strike) => strike.event === event)?.at ?? reading.heard[0]?.at;
  if (at === undefined) return phase;
  const refused = { kind: 'refused', event, at, reason: 'unclear', note: null } as const;
  return phaseOf(readingOf(phaseAfter(phase, { ...refused, candidates: [] })));
}
