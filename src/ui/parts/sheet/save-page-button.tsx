// Hands the sheet out as a page of its own, for people without the app.
import { useState } from 'preact/hooks';
import type { HandedOut } from '../../../domain/ports/file-handout';
import { toBase64 } from '../../../domain/records/backup/base64';
import type { Sheet } from '../../../domain/sheet/sheet';
import type { AppModels } from '../../frame/app-models';
import style from '../../sheet/sheet.css?inline';
import { sheetFile } from '../../sheet/sheet-file';
import { dayWords } from '../../words/day-words';
import { sheetWords } from '../../words/tuner/sheet-words';
import { fileName } from '../controls/csv-button';

export function SavePageButton({
  models: { fileHandout },
  sheet,
  photo,
}: {
  readonly models: Pick<AppModels, 'fileHandout'>;
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
          const file = fileHandout.textFile(name, 'text/html', text);
          void fileHandout.handOut(file).then(setHanded);
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
