// What can be tapped below the bench: listening, moving on, logging blows, and the way back.
import type { ComponentChildren } from 'preact';
import { isAwaiting } from '../../../domain/bench/bench-course';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { BenchModel } from '../../../state/bench/bench-model';
import type { BenchMove } from '../../../state/bench/bench-moves';
import { noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import { addressOf, goTo } from '../../frame/route';
import { benchWords } from '../../words/measuring/bench-words';
import { words } from '../../words/words';

/** What a simulated note needs in place of microphone and hammer. */
export interface SimulatedBench {
  readonly title: string;
  readonly hammer: ComponentChildren;
  readonly strike: (note: MidiNote) => void;
  readonly strikeWords: (note: string) => string;
  readonly leave: () => void;
  readonly leaveWords: string;
}

export function BenchActions({
  model,
  bench,
  simulated,
  isLogging,
  onLogging,
}: {
  readonly model: Pick<BenchModel, 'isHearing' | 'ahead' | 'listen' | 'next' | 'check'>;
  readonly bench: OpenBench;
  readonly simulated: SimulatedBench | null;
  /** Blows are being logged, though none were heard. */
  readonly isLogging: boolean;
  readonly onLogging: (isLogging: boolean) => void;
}) {
  const { course, check, subject } = bench;
  const awaits = isAwaiting(course) && !check;
  return (
    <footer class="actions">
      {!model.isHearing.value && !simulated && (
        <a
          class="button"
          href={addressOf(subject.kind === 'pan' ? { screen: 'pan', pan: subject.pan } : 'listen')}
        >
          {words.back}
        </a>
      )}
      {check ? (
        <button type="button" onClick={() => model.check(null)}>
          {benchWords.nextBack(displayName(course.note))}
        </button>
      ) : simulated ? (
        <button type="button" onClick={simulated.leave}>
          {simulated.leaveWords}
        </button>
      ) : (
        <button
          type="button"
          aria-expanded={isLogging || awaits}
          onClick={() => onLogging(!isLogging)}
          disabled={awaits}
        >
          {isLogging && !awaits ? benchWords.closeBlows : benchWords.blows}
        </button>
      )}
      {simulated ? (
        <button type="button" class="main" onClick={() => simulated.strike(noteHeard(bench))}>
          {simulated.strikeWords(displayName(noteHeard(bench)))}
        </button>
      ) : model.isHearing.value ? (
        <button type="button" class="main" onClick={() => follow(model.next(), bench)}>
          {nextWords(model.ahead.value, bench)}
        </button>
      ) : (
        <button type="button" class="main" onClick={() => void model.listen()}>
          {benchWords.listen}
        </button>
      )}
    </footer>
  );
}

function nextWords(move: BenchMove, { check, course }: OpenBench): string {
  switch (move.kind) {
    case 'check':
      return benchWords.nextCheck(displayName(move.note));
    case 'note':
      return benchWords.nextNote(displayName(move.note));
    case 'done':
      return check ? benchWords.nextBack(displayName(course.note)) : benchWords.done;
  }
}

/** Goes where moving on leads, if that is another screen. */
export function follow(move: BenchMove, { subject, check }: OpenBench): void {
  if (move.kind === 'note') goTo({ screen: 'bench', pan: move.pan, note: move.note });
  else if (move.kind === 'done' && !check && subject.kind !== 'practice') {
    goTo(subject.kind === 'pan' ? { screen: 'pan', pan: subject.pan } : 'listen');
  }
}
