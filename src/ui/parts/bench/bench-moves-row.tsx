// What can be done beside what comes next: logging blows, keeping a reading as it is, and moving on.
import { isAwaiting, newestReading, newestStep } from '../../../domain/bench/bench-course';
import { displayName } from '../../../domain/tuning/note-names';
import type { BenchModel } from '../../../state/bench/bench-model';
import type { BenchMove } from '../../../state/bench/bench-moves';
import type { OpenBench } from '../../../state/bench/open-bench';
import { goTo } from '../../frame/route';
import { benchWords } from '../../words/measuring/bench-words';

export function BenchMoves({
  model,
  bench,
  isSimulated,
  isLogging,
  onLogging,
}: {
  readonly model: Pick<BenchModel, 'isHearing' | 'ahead' | 'main' | 'next' | 'keep'>;
  readonly bench: OpenBench;
  readonly isSimulated: boolean;
  /** Blows are being logged, though none were heard. */
  readonly isLogging: boolean;
  readonly onLogging: (isLogging: boolean) => void;
}) {
  const { course, check, subject } = bench;
  const awaits = isAwaiting(course) && !check;
  const reading = newestReading(check ?? course);
  const isOpen = reading && !newestStep(check ?? course).kept.isAll;
  return (
    <div class="pair bench-moves">
      {!check && !isSimulated && (
        <button
          type="button"
          aria-expanded={isLogging || awaits}
          onClick={() => onLogging(!isLogging)}
          disabled={awaits}
        >
          {isLogging && !awaits ? benchWords.closeBlows : benchWords.blows}
        </button>
      )}
      {isOpen && subject.kind === 'pan' && !awaits && (
        <button type="button" onClick={model.keep}>
          {benchWords.keep}
        </button>
      )}
      {!isSimulated && model.main.value.kind !== 'move' && (
        <button type="button" onClick={() => follow(model.next(), bench)}>
          {nextWords(model.ahead.value, bench)}
        </button>
      )}
    </div>
  );
}

export function nextWords(move: BenchMove, { check, course }: OpenBench): string {
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
