// Where the keyboard is after a screen has changed: at its heading, not at the body. And a way past all that stands
// before the main buttons. Loaded after the first paint.
import { frameWords } from '../../words/frame-words';
import './skip-link.css';

/** Keeps the focus with the screens. */
export function followFocus(window: Window): void {
  const { document } = window;
  const observer = new MutationObserver(() => look());
  /** The screen that is left. */
  let before: Element | null = null;
  const look = (): void => {
    const main = document.querySelector('main');
    const heading = main?.querySelector('h1');
    if (!heading || main === before) return;
    observer.disconnect();
    // A field or a button that has taken the focus keeps it.
    if (document.activeElement && document.activeElement !== document.body) return;
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  };
  // Before anybody else is told of it, and the next screen painted.
  window.addEventListener(
    'hashchange',
    () => {
      before = document.querySelector('main');
      observer.observe(document.body, { childList: true, subtree: true });
    },
    true,
  );

  const link = document.createElement('button');
  link.type = 'button';
  link.className = 'skip-link';
  link.textContent = frameWords.skip;
  link.addEventListener('click', () => mainButtons(document)?.focus());
  document.body.prepend(link);
}

const mainButtons = (document: Document): HTMLElement | null =>
  document.querySelector<HTMLElement>('main .actions :is(.main, a, button)') ??
  document.querySelector<HTMLElement>('main :is(a.main, a, button)');
