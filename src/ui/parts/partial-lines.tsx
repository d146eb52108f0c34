// A line per partial: name, word, signed cents.
import { goodTolerances } from '../../domain/tuning/tolerances';
import type { Cents } from '../../domain/tuning/units';
import { isOutside } from '../../domain/tuning/verdict';
import type { Reading } from '../../domain/work/reading';
import { directionWord, signedCents, words } from '../words';

function Line({
  name,
  cents,
  tolerance,
}: {
  readonly name: string;
  readonly cents: Cents | null;
  readonly tolerance: Cents;
}) {
  const outside = cents !== null && isOutside(cents, tolerance);
  const word = cents === null ? words.notHeard : outside ? directionWord(cents) : words.true;
  const tone = cents === null ? 'unknown' : outside ? (cents < 0 ? 'low' : 'high') : 'true';
  return (
    <tr>
      <th scope="row">{name}</th>
      <td class="word">{word}</td>
      <td class={`value ${tone}`}>{cents === null ? '' : signedCents(cents)}</td>
    </tr>
  );
}

export function PartialLines({ reading }: { readonly reading: Reading }) {
  const { fundamental, octave, third } = reading;
  return (
    <table class="partials">
      <tbody>
        <Line name={words.fundamental} cents={fundamental.cents} tolerance={goodTolerances.main} />
        <Line
          name={words.octave}
          cents={octave?.centsFromOwn ?? null}
          tolerance={goodTolerances.main}
        />
        <Line
          name={third ? words.third[third.kind] : words.thirdUnknown}
          cents={third?.centsFromOwn ?? null}
          tolerance={goodTolerances.third}
        />
      </tbody>
    </table>
  );
}
