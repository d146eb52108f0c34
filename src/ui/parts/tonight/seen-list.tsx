// What was seen at the last knock check, with its photos, folded away.
import { useEffect, useState } from 'preact/hooks';
import type { AttachmentId, KnockCheck } from '../../../domain/records/rack-records';
import { momentWords } from '../../words/day-words';
import { knockWords, lookWords } from '../../words/fall/knock-words';
import { PhotoPicture } from '../controls/photo-field';

type Bytes = Uint8Array<ArrayBuffer>;

export function SeenList({
  check: { looks, remarks, at },
  photoOf,
}: {
  readonly check: KnockCheck;
  /** The photo of that name, or null where it cannot be read. */
  readonly photoOf: (id: AttachmentId) => Promise<Bytes | null>;
}) {
  const shown = looks.filter(({ answer, photo }) => answer !== 'no' || photo !== null);
  return (
    <details class="how-sure seen-list">
      <summary>
        {knockWords.seenTitle} {knockWords.lastLook(momentWords(at))}
      </summary>
      {remarks !== '' && <p>{remarks}</p>}
      {shown.length === 0 && <p>{knockWords.seenNothing}</p>}
      <ul>
        {shown.map(({ look, answer, photo }) => (
          <li key={look}>
            {
              {
                yes: lookWords[look].short,
                no: knockWords.notFound(lookWords[look].short),
                unsure: `${knockWords.notSure}: ${lookWords[look].short}`,
              }[answer]
            }
            {photo !== null && (
              <LookPhoto id={photo} name={lookWords[look].short} photoOf={photoOf} />
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

function LookPhoto({
  id,
  name,
  photoOf,
}: {
  readonly id: AttachmentId;
  readonly name: string;
  readonly photoOf: (id: AttachmentId) => Promise<Bytes | null>;
}) {
  const [bytes, show] = useState<Bytes | null>(null);
  useEffect(() => {
    void photoOf(id).then(show);
  }, [id, photoOf]);
  return bytes && <PhotoPicture bytes={bytes} name={name} />;
}
