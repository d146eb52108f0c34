// What blows did to the note on the bench.

import { effectOfNewest } from '../../../domain/bench/bench-course';
import type { Reading } from '../../../domain/reading/reading';
import type { OpenBench } from '../../../state/bench/open-bench';
import { rowWords } from '../../words/list-words';
import {
  benchChangeWords,
  benchWords,
  blowsHeard,
  effectSentence,
  loggedWords,
  ownChangeWords,
  partialName,
} from '../../words/measuring/bench-words';

/** How octave and third lay against their own fundamental before and lie now, where that is known both times. */
function ownChanges(before: Reading, after: Reading): readonly string[] {
  if (before.walking || after.walking) return [];
  const isOctaveSure = !before.octaveRival && !after.octaveRival;
  const isSameThird = before.third?.kind === after.third?.kind;
  const pairs = [
    { partial: 1 as const, was: before.octave, is: after.octave, isKnown: isOctaveSure },
    { partial: 2 as const, was: before.third, is: after.third, isKnown: isSameThird },
  ];
  return pairs.flatMap(({ partial, was, is, isKnown }) =>
    was && is && isKnown
      ? [ownChangeWords(partialName(partial, after), was.centsFromOwn, is.centsFromOwn)]
      : [],
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
  const own = ownChanges(effect.before, effect.after);
  return (
    <section class="hint effect" aria-label={benchWords.sinceBlows}>
      <h2>{benchWords.sinceBlows}</h2>
      <p class="effect-sentence">
        <b>
          {effect.changes.length === 0
            ? benchWords.nothingToCompare
            : effectSentence(effect.changes, effect.after)}
        </b>
      </p>
      {effect.changes.length > 0 && (
        <p class="changes quiet">
          {effect.changes.map((change) => (
            <span key={change.partial} data-change={change.partial} data-sure={change.isSure}>
              {partialName(change.partial, effect.after)} {benchChangeWords(change)}
            </span>
          ))}
        </p>
      )}
      {own.length > 0 && (
        <p class="own-changes">
          {benchWords.ownTitle}: {rowWords(own)}.
        </p>
      )}
      <p class="quiet">
        {blowsHeard(effect.blows)}{' '}
        {effect.blows.logged ? `${benchWords.logged}: ${loggedWords(effect.blows.logged)}.` : ''}
      </p>
      {isSurprise && <p>{benchWords.surprise}</p>}
    </section>
  );
}
