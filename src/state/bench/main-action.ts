// What comes next on the bench, for the one large button: listening, a strike, where the blows fall, or moving on.
import type { BlowAim } from '../../domain/advice/choose-place';
import { isAwaiting, newestStep } from '../../domain/bench/bench-course';
import type { LoggedBlows } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';
import type { BenchAdvice } from './bench-advice';
import type { BenchMove } from './bench-moves';
import { courseOf, type OpenBench } from './open-bench';

export type MainAction =
  | { readonly kind: 'listen' }
  /** Nothing to tap: the note is to be struck. */
  | { readonly kind: 'strike'; readonly note: MidiNote }
  /** Blows fall, or fell, as they were suggested. */
  | { readonly kind: 'as-suggested'; readonly blows: LoggedBlows; readonly aim: BlowAim }
  /** Blows fell, and nobody has said where. */
  | { readonly kind: 'say-where' }
  | { readonly kind: 'move'; readonly move: BenchMove };

export interface AroundMain {
  readonly isHearing: boolean;
  readonly advice: BenchAdvice | null;
  /** Advice is wanted and not there yet. */
  readonly isAdviceDue: boolean;
  readonly ahead: BenchMove;
}

export function mainAction(
  bench: OpenBench,
  { isHearing, advice, isAdviceDue, ahead }: AroundMain,
): MainAction {
  if (!isHearing) return { kind: 'listen' };
  const { course, check } = bench;
  const strike = { kind: 'strike', note: courseOf(bench).note } as const;
  if (check) return strike;
  const { blows, reading } = newestStep(course);
  const said = advice?.advice;
  if (isAwaiting(course)) {
    if (blows?.logged) return strike;
    return said?.kind === 'blows' ? suggested(said) : { kind: 'say-where' };
  }
  if (!reading || (!reading.settled && !reading.walking) || isAdviceDue) return strike;
  return said?.kind === 'blows' ? suggested(said) : { kind: 'move', move: ahead };
}

const suggested = ({
  place,
  side,
  firmness,
  aim,
}: LoggedBlows & { readonly aim: BlowAim }): MainAction => ({
  kind: 'as-suggested',
  blows: { place, side, firmness },
  aim,
});
