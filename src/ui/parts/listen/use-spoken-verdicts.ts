// The voice of the bench, while its screen is open.
import type { ReadonlySignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Reading } from '../../../domain/reading/reading';
import type { Verdict } from '../../../domain/tuning/verdict';
import type { ReadoutPhase } from '../../../state/listening/readout-phase';
import { type SpokenVerdictPorts, speakVerdicts } from '../../../state/listening/spoken-verdict';
import { spokenWords } from '../../words/measuring/hands-words';

export function useSpokenVerdicts(
  { announcer, listen, settings }: SpokenVerdictPorts,
  phase: ReadonlySignal<ReadoutPhase>,
  verdictOf: (reading: Reading) => Verdict,
): void {
  const newest = useRef(verdictOf);
  newest.current = verdictOf;
  // With the screen, not after it: what settles in its first moment is said, and nothing once it is left.
  useLayoutEffect(
    () =>
      speakVerdicts({ announcer, listen, settings }, phase, (reading) =>
        spokenWords(reading.note, newest.current(reading), reading.walking),
      ),
    [announcer, listen, settings, phase],
  );
}
