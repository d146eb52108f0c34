// The rounds of a pan, newest first; each leads to its result.

import type { NoteStanding } from '../../../domain/reading/note-standing';
import type { PanId } from '../../../domain/records/rack-records';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { addressOf } from '../../frame/route';
import { roundWords } from '../../words/history-words';
import '../drawing/note-rows.css';
import { StandingMark } from '../drawing/standing-mark';

export function RoundRows({
  pan,
  rounds,
  usualAir = null,
}: {
  readonly pan: PanId;
  readonly rounds: readonly RoundResult[];
  /** °C; a round far from it says so. */
  readonly usualAir?: number | null;
}) {
  return (
    <ul class="note-rows">
      {rounds.map((result) => {
        const { title, found, asides } = roundWords(result, usualAir);
        const { round } = result;
        return (
          <li key={round}>
            <a
              class="note-row"
              href={addressOf({ screen: 'result', pan, round })}
              data-round={round}
            >
              <StandingMark standing={worstOf(result)} />
              <span class="row-text">
                <span class="row-head">
                  <b>{title}</b> <span class="row-found">{found}</span>
                </span>
                <span class="aside">{asides}</span>
              </span>
            </a>
          </li>
        );
      })}
    </ul>
  );
}

const worstFirst: readonly NoteStanding[] = ['avoid', 'out', 'playable', 'good'];

const worstOf = ({ standings }: RoundResult): NoteStanding =>
  worstFirst.find((standing) => standings[standing] > 0) ?? 'unread';
