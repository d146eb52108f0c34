// What the shapes of the map mean, and how many notes have each.
import type { NoteStanding } from '../../../domain/reading/note-standing';
import { rackWords } from '../../words/rack-words';
import { StandingMark } from './standing-mark';

const order: readonly NoteStanding[] = ['avoid', 'out', 'playable', 'good', 'unread'];

/** Only what is there: worst first, unread last. */
export function StandingLegend({
  standings,
}: {
  readonly standings: Readonly<Record<NoteStanding, number>>;
}) {
  const there = order.filter((standing) => standings[standing] > 0);
  return (
    <ul class="standing-legend">
      {there.map((standing) => (
        <li key={standing} data-standing={standing}>
          <StandingMark standing={standing} />
          <span>
            <b>{standings[standing]}</b> {rackWords.standings[standing]}
          </span>
        </li>
      ))}
    </ul>
  );
}
