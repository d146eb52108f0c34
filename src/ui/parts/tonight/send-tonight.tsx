// Sends the answer for tonight to somebody who is not beside the van: a picture, and the same in words.
import { useEffect, useState } from 'preact/hooks';
import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import type { PanLayout } from '../../../domain/pans/layout';
import type { FileHandout, FileOnHand, HandedOut } from '../../../domain/ports/file-handout';
import { messageText, type TonightMessage } from '../../words/fall/tonight-message';
import { tonightWords } from '../../words/fall/tonight-words';
import { fileName } from '../controls/csv-button';
import { tonightPicture } from './tonight-picture';

export function SendTonight({
  handout,
  message,
  layout,
  notes,
}: {
  readonly handout: FileHandout;
  readonly message: TonightMessage;
  readonly layout: PanLayout;
  readonly notes: readonly TonightNote[];
}) {
  const [picture, setPicture] = useState<FileOnHand | null>(null);
  const [sent, setSent] = useState<HandedOut | null>(null);
  const [isCopied, setCopied] = useState<boolean | null>(null);
  const text = messageText(message);
  // Made before the tap: the browser forgets a tap after seconds.
  useEffect(() => {
    let isOld = false;
    setPicture(null);
    setSent(null);
    void tonightPicture(message, layout, notes).then((bytes) => {
      if (isOld || bytes === null) return;
      const name = fileName(tonightWords.pictureName(message.pan, message.when));
      setPicture(handout.dataFile(name, 'image/png', bytes));
    });
    return () => {
      isOld = true;
    };
  }, [text, layout, handout]);
  return (
    <section class="field send-tonight" aria-label={tonightWords.send}>
      <button
        type="button"
        class="main wide"
        disabled={picture === null}
        onClick={() => {
          if (picture) void handout.handOut(picture, text).then(setSent);
        }}
      >
        {picture === null ? tonightWords.making : tonightWords.send}
      </button>
      {sent && (
        <p class="hint" role="status">
          {tonightWords.sent[sent]}
        </p>
      )}
      <button type="button" class="wide" onClick={() => void handout.copy(text).then(setCopied)}>
        {tonightWords.copy}
      </button>
      {isCopied !== null && (
        <p class="hint" role="status">
          {isCopied ? tonightWords.copied : tonightWords.notCopied}
        </p>
      )}
      {isCopied === false && <pre class="copy-text">{text}</pre>}
    </section>
  );
}
