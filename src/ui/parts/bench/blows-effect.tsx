// What blows did to the note on the bench, and that a strike must tell.

import { effectOfNewest, newestReading, newestStep } from '../../../domain/bench/bench-course';
import { displayName } from '../../../domain/tuning/note-names';
import type { OpenBench } from '../../../state/bench/open-bench';
import {
  benchChangeWords,
  benchWords,
  blowsHeard,
  loggedWords,
  partialName,
} from '../../words/measuring/bench-words';

/** Blows have fallen: the note is to be struck. */
export function Awaiting({ bench }: { readonly bench: OpenBench }) {
  const { blows } = newestStep(bench.course);
  if (!blows) return null;
  return (
    <p class="hint awaiting" role="status">
      <b>{blowsHeard(blows)}</b> {benchWords.strikeNow(displayName(bench.course.note))}
    </p>
  );
}

/** What the newest answered set of blows did. */
export function EffectOfBlows({
  bench,
  isSurprise,
}: {
  readonly bench: OpenBench;
  /** It is not what other blows on this pan did. */
  readonly isSurprise: boolean;
}) {
  const effect = effectOfNewest(bench.course);
  if (!effect) return null;
  const reading = newestReading(bench.course);
  return (
    <section class="hint effect" aria-label={benchWords.sinceBlows}>
      <h2>{benchWords.sinceBlows}</h2>
      <p class="changes">
        {effect.changes.length === 0
          ? benchWords.nothingToCompare
          : effect.changes.map((change) => (
              <span key={change.partial} data-change={change.partial} data-sure={change.isSure}>
                {partialName(change.partial, reading)} <b>{benchChangeWords(change)}</b>
              </span>
            ))}
      </p>
      <p class="quiet">
        {blowsHeard(effect.blows)}{' '}
        {effect.blows.logged ? `${benchWords.logged}: ${loggedWords(effect.blows.logged)}.` : ''}
      </p>
      {isSurprise && <p>{benchWords.surprise}</p>}
    </section>
  );
}
