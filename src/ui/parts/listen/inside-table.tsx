// The picture of a strike as a table.
import type { StrikeInside } from '../../../domain/measurement/strike-inside';
import { insideWords } from '../../words/measuring/inside-words';
import { signedCents, words } from '../../words/words';
import { isDrawn } from './part-course-geometry';

/** Moments in the table, hundredths of a second. */
const moments = [5, 10, 20, 30, 50, 80];

export function InsideTable({
  inside,
  nameOf,
}: {
  readonly inside: StrikeInside;
  readonly nameOf: (part: StrikeInside['parts'][number]) => string;
}) {
  return (
    <details class="inside-table">
      <summary>{insideWords.asTable}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{insideWords.time}</th>
            {inside.parts.map((part) => (
              <th key={part.name} scope="col">
                {nameOf(part)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {moments
            .filter((at) => at / 100 < inside.seconds)
            .map((at) => (
              <tr key={at}>
                <th scope="row">{insideWords.seconds(at / 100)}</th>
                {inside.parts.map(({ name, course }) => {
                  const now = course.find((each) => Math.round(100 * each.at) === at);
                  return (
                    <td key={name}>
                      {now && isDrawn(now)
                        ? `${signedCents(now.cents)} (${now.levelDb.toFixed(0)} dB)`
                        : words.notHeard}
                    </td>
                  );
                })}
              </tr>
            ))}
        </tbody>
      </table>
    </details>
  );
}
