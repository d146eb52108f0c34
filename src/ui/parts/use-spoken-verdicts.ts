// The voice of the bench, while its screen is open.
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Verdict } from '../../domain/tuning/verdict';
import type { Reading } from '../../domain/work/reading';
import { speakVerdicts } from '../../state/spoken-verdict';
import type { PanScreenModels } from '../app-models';
import { spokenWords } from '../words/hands-words';

export function useSpokenVerdicts(
  { announcer, listen, settings, bench }: PanScreenModels,
  verdictOf: (reading: Reading) => Verdict,
): void {
  const newest = useRef(verdictOf);
  newest.current = verdictOf;
  // With the screen, not after it: what settles in its first moment is said, and nothing once it is left.
  useLayoutEffect(
    () =>
      speakVerdicts({ announcer, listen, settings }, bench.phase, (reading) =>
        spokenWords(reading.note, newest.current(reading), reading.walking),
      ),
    [announcer, listen, settings, bench],
  );
}
