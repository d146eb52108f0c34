// What must be known about a reading beside its verdict, a sentence each; and how sure it is, for who asks.

import type { LeftOutStrikes, Reading } from '../../../domain/reading/reading';
import { displayName } from '../../../domain/tuning/note-names';
import { centsWords } from '../../words/count-words';
import {
  signedCents,
  tenths,
  tenthsUp,
  twoFundamentalsWords,
  twoOctavesWords,
  twoThirdsWords,
  walkingWords,
  words,
} from '../../words/words';

/** The damping test of a reading with two lines at its octave, or null. */
export function dampingTest({ octave, octaveRival }: Reading) {
  if (!octave || !octaveRival) return null;
  const apart = centsWords(octave.centsFromOwn - octaveRival.centsFromOwn);
  return twoOctavesWords(apart, octaveRival.note === null ? null : displayName(octaveRival.note));
}

export function ReadoutHints({ reading }: { readonly reading: Reading }) {
  const test = dampingTest(reading);
  const pair = reading.fundamentalRival && twoFundamentalsWords(reading.fundamentalRival.beatHz);
  return (
    <>
      {reading.walking && (
        <p class="hint warn">{walkingWords(reading.walking.centsPerStrike).why}</p>
      )}
      {pair && (
        <p class="hint">
          {pair.says} <b class="what-to-do">{pair.todo}</b>
        </p>
      )}
      {test && (
        <p class="hint">
          {test.says} <b class="what-to-do">{test.todo}</b>
        </p>
      )}
      {reading.isInferred && <p class="hint">{words.inferredWhy}</p>}
    </>
  );
}

/** The spread, and behind it the standard errors and the strikes that were left out. */
export function HowSure({ reading }: { readonly reading: Reading }) {
  const { fundamental, octave, octaveRival, third, thirdRival, walking, leftOut, strikes, spread } =
    reading;
  const partials = [
    { name: words.fundamental, value: fundamental },
    { name: words.octave, value: octave },
    { name: words.octave, value: octaveRival },
    { name: third ? words.third[third.kind] : '', value: third },
  ];
  const summary = strikes.length > 1 ? words.spread(tenths(spread)) : words.howSure;
  return (
    <details class="how-sure">
      <summary>
        {leftOut.length === 0 ? summary : `${summary} · ${words.leftOutCount(leftOut.length)}`}
      </summary>
      <ul>
        {strikes.length > 1 && <li>{words.spreadWhy}</li>}
        {/* One strike of a walk says nothing about where the note will be. */}
        {!walking &&
          partials.map(
            ({ name, value }) =>
              value && <li>{words.plusMinus(name, tenthsUp(value.sigmaCents))}</li>,
          )}
        {leftOut.map((one) => (
          <li key={one.strike.event}>{words.leftOut(one.why, offBy(reading, one))}</li>
        ))}
        {third && thirdRival && (
          <li>{twoThirdsWords(words.third[third.kind], thirdRival.beatHz)}</li>
        )}
        <li>{words.glide(signedCents(reading.glideCents))}</li>
      </ul>
    </details>
  );
}

function offBy(reading: Reading, { strike, why }: LeftOutStrikes): string {
  const [own, all] =
    why === 'octave'
      ? [strike.octave?.cents, reading.octave?.cents]
      : [strike.fundamental.cents, reading.fundamental.cents];
  return centsWords((own ?? 0) - (all ?? 0));
}
