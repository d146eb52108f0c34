// What can be played of a pan tonight, note by note.
import type { DatedPanNow } from '../../../domain/rounds/pan-now';
import type { RoundResult } from '../../../domain/rounds/round-result';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { TonightOfPan } from '../../../state/pan/tonight-of-pan';
import { tonightWords } from '../../words/fall/tonight-words';
import { noteListWords } from '../../words/list-words';
import { nowWords } from '../../words/now-words';
import { againstBandWords } from '../../words/result-words';
import { TonightMap } from './tonight-map';
import { TonightNotes } from './tonight-notes';

/** The pan in its map, its notes by what may be done with them, and the pan as a whole against the band. */
export function TonightPan({
  pan,
  tonight,
  result,
  before,
}: {
  readonly pan: OpenPan;
  readonly tonight: TonightOfPan;
  readonly result: DatedPanNow;
  readonly before: RoundResult | null;
}) {
  const { notes, verdict, againstBand } = tonight;
  const was = new Map(
    (before?.notes ?? []).flatMap(({ note, againstPan, againstBand: band }) => {
      const cents = againstPan ?? band;
      return cents === null ? [] : [[note, cents] as const];
    }),
  );
  const read = notes.filter(({ isUnread }) => !isUnread);
  const needed = read.filter(({ isNeeded }) => isNeeded);
  const avoided = needed.filter(({ action }) => action === 'avoid');
  const open = result.notes.filter(({ work }) => work === 'not-measured').map(({ note }) => note);
  const unread = notes.filter(({ isUnread, isNeeded }) => isUnread && isNeeded);
  return (
    <>
      {verdict.kind === 'swap' && (
        <p class="quiet">
          {avoided.length > 0
            ? tonightWords.ifNone(noteListWords(avoided.map(({ note }) => note)))
            : tonightWords.ifNoneAll}
        </p>
      )}
      <TonightMap pan={pan.id} layout={pan.current.fields.layout} notes={notes} />
      <TonightNotes title={tonightWords.leaveOut} notes={avoided} before={was} />
      <TonightNotes
        title={tonightWords.inPassing}
        notes={needed.filter(({ action }) => action === 'in-passing')}
        before={was}
      />
      <TonightNotes
        title={tonightWords.otherNotes}
        notes={read.filter(({ isNeeded, action }) => !isNeeded && action !== 'play')}
        before={was}
      />
      {open.length > 0 && <p class="hint">{nowWords.notMeasured(noteListWords(open))}</p>}
      {unread.length > 0 && (
        <p class="hint">{tonightWords.unread(noteListWords(unread.map(({ note }) => note)))}</p>
      )}
      <section class="field" aria-labelledby="against-band">
        <h2 id="against-band">{tonightWords.againstBand}</h2>
        <p data-cents={againstBand?.cents.toFixed(2) ?? ''} class="against-band">
          {result.panPitch && againstBand
            ? `${tonightWords.wholePan(againstBandWords(result.panPitch, result.a4))} ${againstBand.isHeard ? tonightWords.heard : tonightWords.notHeard}`
            : tonightWords.noPitch}
        </p>
      </section>
    </>
  );
}
