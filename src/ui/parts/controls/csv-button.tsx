// Hands readings out as a table for spreadsheets and other programs.
import { useState } from 'preact/hooks';
import type { FileHandout, HandedOut } from '../../../domain/ports/file-handout';
import { resultWords } from '../../words/result-words';

export function CsvButton({
  handout,
  label = resultWords.table,
  name,
  text,
}: {
  readonly handout: FileHandout;
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
          const file = handout.textFile(fileName(name), 'text/csv', text());
          void handout.handOut(file).then(setHanded);
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
