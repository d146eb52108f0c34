// Light or dark on the page: the choice, or the phone's own while nothing is chosen.
import { effect, type ReadonlySignal } from '@preact/signals';
import type { Theme } from '../../domain/settings/settings';

/** Keeps `data-theme` and the colour of the browser's own bars in step with the choice; returns how to end it. */
export function followTheme(theme: ReadonlySignal<Theme>, page: Window): () => void {
  const { document } = page;
  const phone = page.matchMedia('(prefers-color-scheme: light)');
  const show = (): void => {
    const chosen = theme.value;
    const shown = chosen === 'system' ? (phone.matches ? 'light' : 'dark') : chosen;
    document.documentElement.dataset['theme'] = shown;
    // The colours stand in theme.css alone.
    const ground = page.getComputedStyle(document.documentElement).getPropertyValue('--ground');
    for (const meta of document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')) {
      meta.content = ground.trim();
    }
  };
  const end = effect(show);
  phone.addEventListener('change', show);
  return () => {
    end();
    phone.removeEventListener('change', show);
  };
}
