// Hands the sheet out as a page of its own, for people without the app.
import { useState } from 'preact/hooks';
import type { FileHandout, HandedOut } from '../../../domain/ports/file-handout';
import { toBase64 } from '../../../domain/records/backup/base64';
import type { Sheet } from '../../../domain/sheet/sheet';
import style from '../../sheet/sheet.css?inline';
import { sheetFile } from '../../sheet/sheet-file';
import { dayWords } from '../../words/day-words';
import { sheetWords } from '../../words/tuner/sheet-words';
import { fileName } from '../controls/csv-button';

export function SavePageButton({
  handout,
  sheet,
  photo,
}: {
  readonly handout: FileHandout;
  readonly sheet: Sheet;
  /** JPEG. */
  readonly photo: Uint8Array | null;
}) {
  const [handed, setHanded] = useState<HandedOut | null>(null);
  return (
    <>
      <button
        type="button"
        onClick={() => {
          const picture = photo && `data:image/jpeg;base64,${toBase64(photo)}`;
          const name = fileName(sheetWords.pageName(sheet.pan.name, dayWords(sheet.madeAt)));
          const text = sheetFile(sheet, style, picture);
          const file = handout.textFile(name, 'text/html', text);
          void handout.handOut(file).then(setHanded);
        }}
      >
        {sheetWords.savePage}
      </button>
      {handed && (
        <p class={handed === 'failed' ? 'hint warn' : 'hint'} role="status">
          {sheetWords.pageMade[handed]}
        </p>
      )}
    </>
  );
}
