// The notes that work may have moved: measured again one by one, each with what was done to it.

import type { NoteCheck } from '../../../domain/bench/checks-after';
import { displayName } from '../../../domain/tuning/note-names';
import { type ToleranceSet, tolerancesAt } from '../../../domain/tuning/tolerances';
import { verdictOn } from '../../../domain/tuning/verdict';
import { judgeOf } from '../../../state/bench/bench-judging';
import type { BenchModel } from '../../../state/bench/bench-model';
import type { OpenBench } from '../../../state/bench/open-bench';
import { rowWords } from '../../words/list-words';
import {
  benchChangeWords,
  benchWords,
  disturbedWords,
  partialName,
} from '../../words/measuring/bench-words';
import { verdictWords } from '../../words/words';

export function CheckList({
  model,
  limits,
  bench,
}: {
  readonly model: Pick<BenchModel, 'checks' | 'check'>;
  readonly limits: ToleranceSet;
  readonly bench: OpenBench;
}) {
  const checks = model.checks.value;
  if (checks.length === 0) return null;
  const good = tolerancesAt(limits, 'good');
  const isDone = checks.every(({ now }) => now !== null);
  return (
    <section class="rows check-list" aria-label={benchWords.checksTitle}>
      <h2>{benchWords.checksTitle}</h2>
      <p class="aside">
        {isDone ? benchWords.allChecked : benchWords.checksWhy(displayName(bench.course.note))}
      </p>
      <ul class="note-rows">
        {checks.map((check) => {
          const { note } = check.disturbed;
          const verdict = check.now && verdictOn(judgeOf(bench.around, note)(check.now), good);
          const { lines, number } = verdict ? verdictWords(verdict) : { lines: [], number: null };
          return (
            <li key={note}>
              <button
                type="button"
                class="check-row"
                aria-pressed={bench.check?.note === note}
                data-check={note}
                data-checked={check.now !== null}
                onClick={() => model.check(bench.check?.note === note ? null : note)}
              >
                <span class="row-text">
                  <span class="row-head">
                    <b>{displayName(note)}</b>{' '}
                    <span>{[...lines, number ?? ''].join(' ').trim() || benchWords.toCheck}</span>
                  </span>
                  <span class="aside">
                    {[disturbedWords(check.disturbed), effectWords(check)]
                      .filter((each) => each !== '')
                      .join(' · ')}
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** "fundamental −3 ± 0.6, octave no change". */
function effectWords({ before, now, changes }: NoteCheck): string {
  if (!now) return '';
  if (!before) return benchWords.noBefore;
  const sure = changes.filter(({ isSure }) => isSure);
  if (sure.length === 0) return benchWords.noChange;
  return rowWords(
    sure.map((change) => `${partialName(change.partial, now)} ${benchChangeWords(change)}`),
  );
}
