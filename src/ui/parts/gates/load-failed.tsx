// What is shown when a part of the app does not arrive: a sentence, and two ways on.
import { addressOf } from '../../frame/route';
import { words } from '../../words/words';

export function LoadFailed() {
  return (
    <main class="screen">
      <p class="hint warn" role="alert">
        {words.loadFailed}
      </p>
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
        <button type="button" class="main" onClick={() => window.location.reload()}>
          {words.reload}
        </button>
      </footer>
    </main>
  );
}
