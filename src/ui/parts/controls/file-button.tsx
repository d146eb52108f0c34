// Opens a sound file, and says what became of it.
import type { FileNotice } from '../../../state/listening/file-listening';
import { words } from '../../words/words';

export function FileButton({ onFile }: { readonly onFile: (file: File) => void }) {
  return (
    <label class="button file">
      {words.openFile}
      <input
        type="file"
        accept="audio/*,.wav"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen again.
          event.currentTarget.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}

export function FileNoticeLine({ notice }: { readonly notice: FileNotice }) {
  const sentence = sentenceFor(notice);
  return sentence ? (
    <p class="hint" role="status">
      {sentence}
    </p>
  ) : null;
}

function sentenceFor(notice: FileNotice): string | null {
  switch (notice.kind) {
    case 'none':
      return null;
    case 'reading':
      return words.fileReading;
    case 'unreadable':
      return words.fileUnreadable[notice.why];
    case 'read':
      return notice.resampled
        ? `${words.fileRead(notice.heard)} ${words.fileResampled}`
        : words.fileRead(notice.heard);
  }
}
