// Shows what is read from the rack once it is open, and says why it is not.
import type { ComponentChildren } from 'preact';
import type { NotOpen, OpenView } from '../../../state/asking/open-view';
import { rackWords, storeTroubleWords } from '../../words/rack-words';
import { Instead, InTrouble } from './instead';

interface Otherwise {
  /** Shown where there is no such thing on this phone. */
  readonly missing?: ComponentChildren;
  /** Tries again after a trouble; without it nothing can be tried. */
  readonly onRetry?: () => void;
}

export function ViewGate<Read>({
  view,
  children,
  ...otherwise
}: Otherwise & {
  readonly view: OpenView<Read>;
  readonly children: (read: Read) => ComponentChildren;
}) {
  return view.kind === 'open' ? children(view) : <NotOpenYet view={view} {...otherwise} />;
}

function NotOpenYet({ view, missing, onRetry }: Otherwise & { readonly view: NotOpen }) {
  switch (view.kind) {
    case 'loading':
      return <Instead text={rackWords.reading} tone="hint" />;
    case 'missing':
      return <>{missing}</>;
    case 'trouble':
      return onRetry ? (
        <InTrouble trouble={view.trouble} onRetry={onRetry} />
      ) : (
        <Instead text={storeTroubleWords[view.trouble]} tone="hint warn" />
      );
  }
}
