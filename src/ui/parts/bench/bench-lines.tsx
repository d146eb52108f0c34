// One line for each partial of the note on the bench: its target, where it was at the opening, and where it is now.

import { type PartialMadeWorse, partialsMadeWorse } from '../../../domain/bench/made-worse';
import type { JudgedNote } from '../../../domain/reading/judge-note';
import { type ToleranceSet, tolerancesAt } from '../../../domain/tuning/tolerances';
import type { Cents } from '../../../domain/tuning/units';
import { isOutside } from '../../../domain/tuning/verdict';
import { benchWords, partialName, topNoteWords } from '../../words/measuring/bench-words';
import { directionWord, signedCents, words } from '../../words/words';

export function BenchLines({
  before,
  now,
  limits,
}: {
  /** At the opening; null while that is the only reading. */
  readonly before: JudgedNote | null;
  readonly now: JudgedNote;
  readonly limits: ToleranceSet;
}) {
  const good = tolerancesAt(limits, 'good');
  const isTop = now.note > limits.highestWithPartials;
  const worse = before ? partialsMadeWorse(before, now, limits) : [];
  const worseBy = (partial: PartialMadeWorse['partial'] | null): number | null => {
    const found = worse.find((each) => each.partial === partial);
    return found ? Math.abs(found.now) - Math.abs(found.before) : null;
  };
  const table = (
    <table class="partials bench-lines">
      <caption class="only-spoken">{benchWords.linesTitle}</caption>
      <thead>
        <tr>
          <td />
          <td />
          {before ? <th scope="col">{benchWords.opening}</th> : <td />}
          <th scope="col">{benchWords.now}</th>
        </tr>
      </thead>
      <tbody>
        <Line
          name={words.fundamental}
          before={before?.fundamental.cents ?? null}
          now={now.fundamental.cents}
          limit={good.main}
        />
        <Line
          name={words.octave}
          before={ownOctave(before)}
          now={ownOctave(now)}
          limit={isTop ? null : good.main}
          worseBy={worseBy('octave')}
        />
        <Line
          name={partialName(2, now)}
          before={
            before?.third?.kind === now.third?.kind ? (before?.third?.centsFromOwn ?? null) : null
          }
          now={now.third?.centsFromOwn ?? null}
          limit={isTop ? null : good.third}
          worseBy={worseBy(now.third?.kind ?? null)}
        />
      </tbody>
    </table>
  );
  return isTop ? (
    <>
      {table}
      <p class={worse.length > 0 ? 'hint warn top-note' : 'quiet top-note'} role="status">
        {topNoteWords(worse)} {benchWords.topWhy}
      </p>
    </>
  ) : (
    table
  );
}

/** Two lines at the octave have no value. */
const ownOctave = (judged: JudgedNote | null): Cents | null =>
  judged?.octave && !judged.octaveRival ? judged.octave.centsFromOwn : null;

function Line({
  name,
  before,
  now,
  limit,
  worseBy = null,
}: {
  readonly name: string;
  readonly before: Cents | null;
  readonly now: Cents | null;
  /** Null where the value is for information only. */
  readonly limit: Cents | null;
  /** How much further off the work moved a value that is for information only; null: it did not. */
  readonly worseBy?: number | null;
}) {
  const isOff = now !== null && limit !== null && isOutside(now, limit);
  const word = now === null ? words.notHeard : isOff ? directionWord(now) : words.good;
  const isInformation = limit === null && now !== null;
  const isToned = now !== null && (limit !== null || worseBy !== null);
  const tone = !isToned
    ? 'unknown'
    : isOff || worseBy !== null
      ? now < 0
        ? 'low'
        : 'high'
      : 'true';
  return (
    <tr {...(worseBy === null ? {} : { class: 'made-worse', 'data-worse': Math.round(worseBy) })}>
      <th scope="row">{name}</th>
      <td class="word">
        {!isInformation
          ? word
          : worseBy === null
            ? benchWords.notJudged
            : benchWords.worse(String(Math.round(worseBy)))}
      </td>
      <td class="value unknown">{before === null ? '' : signedCents(before)}</td>
      <td class={`value ${tone}`}>{now === null ? '' : signedCents(now)}</td>
    </tr>
  );
}
