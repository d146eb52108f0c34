// One thing to look at after a fall: a big yes and no, what to do, what nobody must do, a photo.

import type { Photos } from '../../../domain/ports/pan-store';
import { type LookAnswer, type LookKind, lookAnswers } from '../../../domain/records/look-kinds';
import { knockWords, lookWords } from '../../words/fall/knock-words';
import { PhotoField } from '../controls/photo-field';
import { LookPicture } from './look-picture';

export function LookQuestion({
  look,
  answer,
  photo,
  photos,
  onAnswer,
  onPhoto,
}: {
  readonly look: LookKind;
  readonly answer: LookAnswer | null;
  readonly photo: Uint8Array<ArrayBuffer> | null;
  readonly photos: Photos;
  readonly onAnswer: (answer: LookAnswer) => void;
  readonly onPhoto: (bytes: Uint8Array<ArrayBuffer> | null) => void;
}) {
  const { question, hint, toDo, never, short } = lookWords[look];
  return (
    <section class="look" data-look={look} aria-labelledby={`look-${look}`}>
      <h2 id={`look-${look}`} class="question">
        {question}
      </h2>
      <div class="look-help">
        <LookPicture look={look} />
        <p>{hint}</p>
      </div>
      <div class="pair answers">
        {lookAnswers.map((each) => (
          <button
            key={each}
            type="button"
            data-answer={each}
            aria-pressed={answer === each}
            onClick={() => onAnswer(each)}
          >
            {knockWords[each]}
          </button>
        ))}
      </div>
      {answer === 'yes' && (
        <div class="hint warn" role="status">
          <h3>{knockWords.toDo}</h3>
          <p>{toDo}</p>
          <h3>{knockWords.mustNot}</h3>
          <p>{never}</p>
        </div>
      )}
      {answer === 'unsure' && (
        <p class="hint" role="status">
          {knockWords.unsureToDo}
        </p>
      )}
      <PhotoField photos={photos} bytes={photo} name={short} onChange={onPhoto} />
    </section>
  );
}
