// What stands in for a screen that has nothing to show yet, or cannot show it.
import type { ComponentChildren } from 'preact';
import type { StoreTrouble } from '../../../domain/ports/pan-store';
import { addressOf } from '../../frame/route';
import { panWords } from '../../words/pan-words';
import { rackWords, storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';

/** What another phone may have: its file brings it here. */
export function NotHere({ text }: { readonly text: string }) {
  return (
    <Instead text={`${text} ${panWords.askForFile}`} tone="hint warn">
      <a class="button" href={addressOf('receive')}>
        {panWords.takeFileIn}
      </a>
    </Instead>
  );
}

/** What cannot be read, why, and the button that tries again. */
export function InTrouble({
  trouble,
  onRetry,
}: {
  readonly trouble: StoreTrouble;
  readonly onRetry: () => void;
}) {
  return (
    <Instead text={storeTroubleWords[trouble]} tone="hint warn">
      <button type="button" onClick={onRetry}>
        {rackWords.tryAgain}
      </button>
    </Instead>
  );
}

/** A screen that has nothing else to show: a sentence and the way back. */
export function Instead({
  text,
  tone,
  children,
}: {
  readonly text: string;
  readonly tone: string;
  readonly children?: ComponentChildren;
}) {
  return (
    <main class="screen">
      <p class={tone} role="status">
        {text}
      </p>
      {children}
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}
