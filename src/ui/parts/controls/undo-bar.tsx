// The bar that takes something back: below every screen, for ten seconds, wherever one goes meanwhile.
import { render } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { UndoModel } from '../../../state/keeping/undo-model';
import { frameWords } from '../../words/frame-words';
import { doneWords } from '../../words/keeping/undo-words';
import './undo-bar.css';

/** Puts the bar beside the app: it outlives the screen whose button was tapped. */
export function showUndoBar(undo: UndoModel, page: Document): void {
  const place = page.createElement('div');
  page.body.append(place);
  render(<UndoBar undo={undo} root={page.documentElement} />, place);
}

function UndoBar({ undo, root }: { readonly undo: UndoModel; readonly root: HTMLElement }) {
  const bar = useRef<HTMLElement>(null);
  const offer = undo.offer.value;
  // The buttons at the end of a screen move up: nothing lies behind the bar.
  useLayoutEffect(() => {
    const height = offer && bar.current ? bar.current.offsetHeight : 0;
    root.style.setProperty('--undo-bar', `${height}px`);
  }, [offer, root]);
  return (
    <aside ref={bar} class="undo-bar" aria-label={frameWords.undoBar} hidden={offer === null}>
      <p role="status">{offer && doneWords(offer.done)}</p>
      {offer && (
        <button
          type="button"
          onFocus={() => undo.hold(true)}
          onBlur={() => undo.hold(false)}
          onClick={undo.takeBack}
        >
          {frameWords.undo}
        </button>
      )}
    </aside>
  );
}
