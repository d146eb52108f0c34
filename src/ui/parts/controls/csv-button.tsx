// Hands readings out as a table for spreadsheets and other programs.
import { useState } from 'preact/hooks';
import type { HandedOut } from '../../../domain/ports/file-handout';
import type { AppModels } from '../../frame/app-models';
import { resultWords } from '../../words/result-words';

export function CsvButton({
  models: { fileHandout },
  label = resultWords.table,
  name,
  text,
}: {
  readonly models: Pick<AppModels, 'fileHandout'>;
  readonly label?: string;
  /** Of the file. */
  readonly name: string;
  /** Made at the tap: it is quick. */
  readonly text: () => string;
}) {
  const [handed, setHanded] = useState<HandedOut | null>(null);
  return (
    <>
      <button
        type="button"
        class="wide"
        onClick={() => {
          const file = fileHandout.textFile(fileName(name), 'text/csv', text());
          void fileHandout.handOut(file).then(setHanded);
        }}
      >
        {label}
      </button>
      {handed && (
        <p class={handed === 'failed' ? 'hint warn' : 'hint'} role="status">
          {resultWords.tableMade[handed]}
        </p>
      )}
    </>
  );
}

/** Without signs that some phone refuses in the name of a file. */
export const fileName = (name: string): string => name.replace(/[\\/:*?"<>|\p{Cc}]+/gu, ' ').trim();
