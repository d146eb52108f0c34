// Instead of the app, when another page shows it inside itself: what is tapped here could be tapped for somebody else.
import { words } from './words/words';

export const isFramed = (window: Window): boolean => window.top !== window.self;

export function FramedNotice() {
  return (
    <main class="screen">
      <p class="hint">{words.framed}</p>
      <a class="button" href="./" target="_blank" rel="noopener">
        {words.openAlone}
      </a>
    </main>
  );
}
