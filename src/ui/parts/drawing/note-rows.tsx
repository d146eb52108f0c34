// Notes as a list: how each stands in a word, a shape and a number, and its partials in cents.
import type { PanId, RoundId } from '../../../domain/records/rack-records';
import type { NoteResult } from '../../../domain/rounds/judged-pan';
import type { NoteNow } from '../../../domain/rounds/pan-now';
import { displayName } from '../../../domain/tuning/note-names';
import { addressOf } from '../../frame/route';
import { rowWords } from '../../words/list-words';
import { benchWords } from '../../words/measuring/bench-words';
import { sinceRoundWords } from '../../words/now-words';
import { rackWords } from '../../words/rack-words';
import { partialsLine } from '../../words/result-words';
import { standingTitle } from '../../words/standing-words';
import { signedCents, words } from '../../words/words';
import './note-rows.css';
import { StandingMark } from './standing-mark';

export function NoteRows({
  pan,
  from = null,
  notes,
}: {
  readonly pan: PanId;
  /** The round whose result this is on. */
  readonly from?: RoundId | null;
  /** As a round found them, or as they stand now. */
  readonly notes: readonly (NoteResult | NoteNow)[];
}) {
  return (
    <ul class="note-rows">
      {notes.map((each) => (
        <li key={each.note}>
          <NoteRow pan={pan} from={from} result={each} />
          {isToWork(each) && (
            <a
              class="row-bench"
              href={addressOf({ screen: 'bench', pan, note: each.note })}
              aria-label={words.workOn(displayName(each.note))}
            >
              {benchWords.bench}
            </a>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Good notes and notes that were not read are left alone. */
const isToWork = ({ standing }: NoteResult): boolean =>
  standing !== 'good' && standing !== 'unread';

function NoteRow({
  pan,
  from,
  result,
}: {
  readonly pan: PanId;
  readonly from: RoundId | null;
  readonly result: NoteResult | NoteNow;
}) {
  const { note, standing, reason, judged } = result;
  const off = reason.kind === 'off' ? reason.fault.cents : null;
  const tone = off === null ? '' : off < 0 ? 'low' : 'high';
  const asides = [rackWords.standings[standing], judged ? partialsLine(judged) : ''];
  const since = 'work' in result ? sinceRoundWords(result) : [];
  return (
    <a
      class="note-row"
      href={addressOf({ screen: 'note', pan, note, from })}
      data-note={note}
      data-cents={result.againstBand?.toFixed(2) ?? ''}
    >
      <StandingMark standing={standing} />
      <span class="row-text">
        <span class="row-head">
          <b>{displayName(note)}</b> <span>{standingTitle(result)}</span>
          {off !== null && <b class={`row-number ${tone}`}>{signedCents(off)}</b>}
        </span>
        <span class="aside">{asides.filter((each) => each !== '').join(': ')}</span>
        {since.length > 0 && <span class="aside">{rowWords(since)}</span>}
      </span>
    </a>
  );
}
