// The three partials as they are now and were before the last blows, large enough to be read with a hammer in the hand.

import type { PartialMadeWorse } from '../../../domain/bench/made-worse';
import type { JudgedNote } from '../../../domain/reading/judge-note';
import { type ToleranceSet, tolerancesAt } from '../../../domain/tuning/tolerances';
import type { Cents } from '../../../domain/tuning/units';
import { isOutside } from '../../../domain/tuning/verdict';
import { partialName } from '../../words/measuring/bench-words';
import { handsWords } from '../../words/measuring/hands-words';
import { signedCents, words } from '../../words/words';

export function HandsLines({
  before,
  now,
  limits,
  worse,
}: {
  /** Before the last blows that a strike has answered; null without any. */
  readonly before: JudgedNote | null;
  /** Null before the first strike. */
  readonly now: JudgedNote | null;
  readonly limits: ToleranceSet;
  /** Partials that the work made worse, where they are no fault of the note. */
  readonly worse: readonly PartialMadeWorse[];
}) {
  const good = tolerancesAt(limits, 'good');
  const isTop = now !== null && now.note > limits.highestWithPartials;
  const isWorse = (partial: PartialMadeWorse['partial'] | undefined): boolean =>
    worse.some((each) => each.partial === partial);
  const isSameThird = before?.third?.kind === now?.third?.kind;
  return (
    <table class="hands-lines">
      <caption class="only-spoken">{handsWords.linesTitle}</caption>
      <tbody>
        <Line
          name={words.fundamental}
          was={before?.fundamental.cents ?? null}
          now={now?.fundamental.cents ?? null}
          limit={good.main}
          isWorse={false}
        />
        <Line
          name={words.octave}
          was={ownOctave(before)}
          now={ownOctave(now)}
          limit={isTop ? null : good.main}
          isWorse={isWorse('octave')}
        />
        <Line
          name={partialName(2, now)}
          was={isSameThird ? (before?.third?.centsFromOwn ?? null) : null}
          now={now?.third?.centsFromOwn ?? null}
          limit={isTop ? null : good.third}
          isWorse={isWorse(now?.third?.kind)}
        />
      </tbody>
    </table>
  );
}

/** Two lines at the octave have no value. */
const ownOctave = (judged: JudgedNote | null): Cents | null =>
  judged?.octave && !judged.octaveRival ? judged.octave.centsFromOwn : null;

function Line({
  name,
  was,
  now,
  limit,
  isWorse,
}: {
  readonly name: string;
  readonly was: Cents | null;
  readonly now: Cents | null;
  /** Null where the value is for information only. */
  readonly limit: Cents | null;
  readonly isWorse: boolean;
}) {
  const isOff = isWorse || (now !== null && limit !== null && isOutside(now, limit));
  const isToned = now !== null && (limit !== null || isWorse);
  const tone = !isToned ? 'unknown' : !isOff ? 'true' : now < 0 ? 'low' : 'high';
  return (
    <tr>
      <th scope="row">{name}</th>
      <td class="was">
        {isWorse && <b>{handsWords.worse} </b>}
        {was === null ? '' : handsWords.was(signedCents(was))}
      </td>
      <td class={`value ${tone}`}>{now === null ? '' : signedCents(now)}</td>
    </tr>
  );
}
