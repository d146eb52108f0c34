// Shows what needs an open pan once it is open, and says why it is not.
import type { ComponentChildren } from 'preact';
import type { OpenPan } from '../../state/pan-model';
import type { PanScreenModels } from '../app-models';
import { addressOf } from '../route';
import { words } from '../words';
import { panWords } from '../words/pan-words';
import { rackWords, storeTroubleWords } from '../words/rack-words';

export function PanGate({
  models,
  children,
}: {
  readonly models: PanScreenModels;
  readonly children: (pan: OpenPan) => ComponentChildren;
}) {
  const view = models.pan.view.value;
  switch (view.kind) {
    case 'open':
      return <>{children(view.pan)}</>;
    case 'none':
    case 'loading':
      return <Instead text={rackWords.reading} tone="hint" />;
    case 'missing':
      return <Instead text={panWords.missing} tone="hint warn" />;
    case 'trouble':
      return <Instead text={storeTroubleWords[view.trouble]} tone="hint warn" />;
  }
}

/** A screen that has nothing else to show: a sentence and the way back. */
export function Instead({ text, tone }: { readonly text: string; readonly tone: string }) {
  return (
    <main class="screen">
      <p class={tone} role="status">
        {text}
      </p>
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}
