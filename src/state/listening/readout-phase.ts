// What the readout shows, as one union, and how each thing heard changes it.
import type { Heard, RefusalReason, Strike } from '../../domain/measurement/strike';
import { addStrike, type Reading } from '../../domain/reading/reading';
import type { MidiNote } from '../../domain/tuning/units';

export type Refusal = RefusalReason | 'again' | 'knock';

export type ReadoutPhase =
  | { readonly kind: 'idle' }
  | { readonly kind: 'listening' }
  | {
      readonly kind: 'heard';
      readonly reading: Reading;
      /** What was known before a first look that took the strike for another note; null otherwise. */
      readonly before: Reading | null;
    }
  | { readonly kind: 'settled'; readonly reading: Reading }
  | {
      readonly kind: 'refused';
      readonly reason: Refusal;
      /** The note it seemed to be, for `wrong-note`. */
      readonly note: MidiNote | null;
      /** The notes it may have been, for `which-note`. */
      readonly candidates: readonly MidiNote[];
      /** What was known before; shown small, and continued by the next strike. */
      readonly held: Reading | null;
    };

/** The reading that a phase shows or holds. */
export function readingOf(phase: ReadoutPhase): Reading | null {
  switch (phase.kind) {
    case 'idle':
    case 'listening':
      return null;
    case 'heard':
    case 'settled':
      return phase.reading;
    case 'refused':
      return phase.held;
  }
}

/** The phase after something was heard. */
export function phaseAfter(phase: ReadoutPhase, heard: Heard): ReadoutPhase {
  const held = readingBefore(phase, heard.event);
  switch (heard.kind) {
    case 'knock':
      return { kind: 'refused', reason: 'knock', note: null, candidates: [], held };
    case 'refused':
      return {
        kind: 'refused',
        reason: heard.reason,
        note: heard.note,
        candidates: heard.reason === 'which-note' ? heard.candidates : [],
        held: withoutEvent(held, heard.event),
      };
    case 'strike': {
      const known = withoutOldLooks(held, heard.event);
      const step = addStrike(known, heard);
      // A first look may still be off: only the settled strike can disagree.
      if (step.kind === 'again' && !heard.provisional) {
        const { note } = heard;
        return { kind: 'refused', reason: 'again', note, candidates: [], held: step.reading };
      }
      if (step.kind === 'again') return phase;
      if (step.reading.settled) return { kind: 'settled', reading: step.reading };
      const isOtherNote = known !== null && known.note !== heard.note;
      const before = heard.provisional && isOtherNote ? known : null;
      return { kind: 'heard', reading: step.reading, before };
    }
  }
}

/** The reading that `event` is added to: without the first look at it, if that named another note. */
function readingBefore(phase: ReadoutPhase, event: number): Reading | null {
  if (phase.kind !== 'heard' || phase.before === null) return readingOf(phase);
  return phase.reading.heard[0]?.event === event ? phase.before : phase.reading;
}

/** A provisional strike that turned out to be no good is taken out again. */
const withoutEvent = (reading: Reading | null, event: number): Reading | null =>
  onlyStrikes(reading, (strike) => strike.event !== event);

/** First looks that never settled have no say over the strikes after them. */
const withoutOldLooks = (reading: Reading | null, event: number): Reading | null =>
  onlyStrikes(reading, (strike) => !strike.provisional || strike.event === event);

function onlyStrikes(reading: Reading | null, isKept: (strike: Strike) => boolean): Reading | null {
  if (!reading) return null;
  const rest = reading.heard.filter(isKept);
  if (rest.length === reading.heard.length) return reading;
  return rest.reduce<Reading | null>((sum, strike) => addStrike(sum, strike).reading, null);
}
