// What is written down about a pan, on its page.
import type { OpenPan } from '../../../state/pan/pan-model';
import { familyTitle } from '../../words/family-words';
import { panWords } from '../../words/pan-words';
import { PhotoPicture } from '../controls/photo-field';

/** What is written down about the pan, where anything is. */
export function PanAbout({ pan }: { readonly pan: OpenPan }) {
  const { family, owner, maker, serial, finish, remarks, name } = pan.current.fields;
  const facts = [
    [panWords.family, familyTitle(family)],
    [panWords.owner, owner],
    [panWords.maker, maker],
    [panWords.serial, serial],
    [panWords.finish, finish],
    [panWords.remarks, remarks],
  ].filter(([, text]) => text !== '');
  return (
    <section class="about" aria-label={panWords.details}>
      {pan.photo && <PhotoPicture bytes={pan.photo.bytes} name={name} />}
      <dl>
        {facts.map(([title, text]) => (
          <div key={title}>
            <dt>{title}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
