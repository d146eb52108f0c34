// Where the pan lies as a whole, in hertz and against the band.

import type { RoundResult } from '../../../domain/rounds/round-result';
import type { Hertz } from '../../../domain/tuning/units';
import { a4Words, againstBandWords, resultWords, spreadWords } from '../../words/result-words';
import './pan-pitch.css';

export function PanPitchLine({
  result: { panPitch, a4 },
}: {
  readonly result: Pick<RoundResult, 'panPitch'> & { readonly a4: Hertz };
}) {
  if (!panPitch) return <p class="quiet">{resultWords.noPanPitch}</p>;
  return (
    <p class="pan-pitch" data-cents={panPitch.cents.toFixed(2)}>
      {resultWords.panPitch} <b>{a4Words(panPitch.a4)}</b>, {againstBandWords(panPitch, a4)}.{' '}
      {spreadWords(panPitch)}
    </p>
  );
}

/** The big line: what stands in the way of playing the pan. */
export function Headline({ big, small }: { readonly big: string; readonly small: string }) {
  return (
    <p class="headline">
      {big}
      {small !== '' && <span>; {small}</span>}
    </p>
  );
}
