// Ring partners that beat, the widest interval first.
import type { PartnerBeat } from '../../../domain/pans/partner-beats';
import { beatWords, resultWords } from '../../words/result-words';
import '../drawing/note-rows.css';

const shownBeats = 6;

export function BeatRows({ beats }: { readonly beats: readonly PartnerBeat[] }) {
  if (beats.length === 0) return <p class="quiet">{resultWords.partnersNone}</p>;
  const more = beats.slice(shownBeats);
  return (
    <>
      <Rows beats={beats.slice(0, shownBeats)} />
      {more.length > 0 && (
        <details>
          <summary>{resultWords.partnersMore(more.length)}</summary>
          <Rows beats={more} />
        </details>
      )}
    </>
  );
}

function Rows({ beats }: { readonly beats: readonly PartnerBeat[] }) {
  return (
    <ul class="plain-rows beats">
      {beats.map((beat) => {
        const { who, how, apart, beats: rate } = beatWords(beat);
        return (
          <li key={how} class="plain-row">
            <span class="row-text">
              <span class="row-head">
                <b>{who}</b> <span class="row-number">{apart}</span>
              </span>
              <span class="aside">
                {how}, {rate}
              </span>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
