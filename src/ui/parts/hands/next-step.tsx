// The next step in one row: the place on the oval, how many blows, from which side, and what they may disturb.

import type { Advice } from '../../../domain/advice/advice';
import { noteListWords } from '../../words/list-words';
import { adviceTitle, leaveWords, professionalWords } from '../../words/measuring/advice-words';
import { handsWords, stepWords } from '../../words/measuring/hands-words';
import { PlacePicture } from '../drawing/place-picture';

export function NextStep({ advice }: { readonly advice: Advice }) {
  if (advice.kind !== 'blows') {
    // That more strikes are wanted stands where the next thing to do stands.
    if (advice.kind === 'leave' && advice.why.kind === 'not-settled') return null;
    const why = advice.kind === 'leave' ? leaveWords(advice.why) : professionalWords(advice.why);
    return (
      <div class="next-step" data-step={advice.kind}>
        <p>
          <b class="step-blows">{adviceTitle(advice)}</b>
          <span class="step-why">{why}</span>
        </p>
      </div>
    );
  }
  const { place, side, disturbs } = advice;
  const notes = [...new Set(disturbs.map(({ note }) => note))];
  return (
    <div class="next-step" data-step="blows" data-place={place}>
      <PlacePicture places={[{ place, side }]} />
      <p>
        <b class="step-blows">{stepWords(advice)}</b>
        <span class="step-place">{handsWords.places[place]}</span>
        {notes.length > 0 && (
          <span class="step-risk">{handsWords.mayMove(noteListWords(notes))}</span>
        )}
      </p>
    </div>
  );
}
