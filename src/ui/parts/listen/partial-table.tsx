// A line per partial: name, word, signed cents.

import type { Reading } from '../../../domain/reading/reading';
import { goodTolerances } from '../../../domain/tuning/tolerances';
import type { Cents } from '../../../domain/tuning/units';
import { allowedFor, isOutside } from '../../../domain/tuning/verdict';
import { directionWord, signedCents, words } from '../../words/words';

interface LineProps {
  readonly name: string;
  /** Under the name: how the value was come by. */
  readonly remark?: string;
  readonly cents: Cents | null;
  readonly tolerance: Cents;
  /** As far off the value may be before its error allows to say so: above the tolerance it is unsure in between. */
  readonly allowed: Cents;
}

function Line({ name, remark, cents, tolerance, allowed }: LineProps) {
  if (cents !== null && allowed > tolerance && !isOutside(cents, allowed)) {
    return (
      <OpenLine name={name} {...(remark ? { remark } : {})} word={words.unsure} cents={cents} />
    );
  }
  const outside = cents !== null && isOutside(cents, allowed);
  const word = cents === null ? words.notHeard : outside ? directionWord(cents) : words.good;
  const tone = cents === null ? 'unknown' : outside ? (cents < 0 ? 'low' : 'high') : 'true';
  return (
    <tr>
      <th scope="row">
        {name}
        {remark && <small> {remark}</small>}
      </th>
      <td class="word">{word}</td>
      <td class={`value ${tone}`}>{cents === null ? '' : signedCents(cents)}</td>
    </tr>
  );
}

/** A value without a verdict: one of two lines at the octave, or a fundamental that walks. */
const OpenLine = ({
  name,
  remark,
  word,
  cents,
}: Pick<LineProps, 'name' | 'remark'> & { readonly word: string; readonly cents: Cents }) => (
  <tr>
    <th scope="row">
      {name}
      {remark && <small> {remark}</small>}
    </th>
    <td class="word">{word}</td>
    <td class="value unknown">{signedCents(cents)}</td>
  </tr>
);

export function PartialTable({ reading }: { readonly reading: Reading }) {
  const { fundamental, fundamentalRival, isInferred, octave, octaveRival, third, walking } =
    reading;
  const { main, third: thirdLimit } = goodTolerances;
  return (
    <table class="partials">
      <tbody>
        {walking ? (
          <OpenLine name={words.fundamental} word={words.walking} cents={fundamental.cents} />
        ) : (
          <Line
            name={words.fundamental}
            {...(isInferred ? { remark: words.inferred } : {})}
            cents={fundamental.cents}
            tolerance={main}
            allowed={allowedFor(reading, fundamental, main)}
          />
        )}
        {!walking && fundamentalRival && (
          <OpenLine
            name={words.fundamental}
            word={words.secondLine}
            cents={fundamentalRival.cents}
          />
        )}
        {octave && octaveRival ? (
          <>
            <OpenLine name={words.octave} word={words.unsure} cents={octave.centsFromOwn} />
            <OpenLine name={words.octave} word={words.unsure} cents={octaveRival.centsFromOwn} />
          </>
        ) : (
          <Line
            name={words.octave}
            cents={octave?.centsFromOwn ?? null}
            tolerance={main}
            allowed={allowedFor(reading, octave ?? {}, main)}
          />
        )}
        <Line
          name={third ? words.third[third.kind] : words.thirdUnknown}
          cents={third?.centsFromOwn ?? null}
          tolerance={thirdLimit}
          allowed={allowedFor(reading, third ?? {}, thirdLimit)}
        />
      </tbody>
    </table>
  );
}
