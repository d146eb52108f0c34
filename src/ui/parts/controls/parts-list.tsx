// The parts of a long page, as a list at its top: a tap leads to one.
import { useState } from 'preact/hooks';
import { pageWords } from '../../words/explained-words';

export function PartsList() {
  const [parts, list] = useState<readonly HTMLElement[]>([]);
  return (
    <details
      class="how-sure parts-list"
      onToggle={({ currentTarget }) => {
        // As the page is now: parts come and go.
        const page = currentTarget.closest('main');
        list([...(page?.querySelectorAll<HTMLElement>('h2, legend') ?? [])].filter(isShown));
      }}
    >
      <summary>{pageWords.parts}</summary>
      <ul>
        {parts.map((part, k) => (
          <li key={k}>
            <button
              type="button"
              onClick={() => {
                part.tabIndex = -1;
                part.focus();
                part.scrollIntoView({ block: 'start' });
              }}
            >
              {part.textContent}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

const isShown = (part: HTMLElement): boolean =>
  part.checkVisibility() && part.textContent?.trim() !== '';
