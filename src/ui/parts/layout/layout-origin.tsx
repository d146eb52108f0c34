// Where a layout comes from and what about it is doubtful: never offered as fact.
import type { ComponentChildren } from 'preact';
import type { PanLayout } from '../../../domain/pans/layout';
import { layoutWords } from '../../words/layout-words';

export function LayoutOrigin({
  layout: { doubts = [], source },
  children,
}: {
  readonly layout: PanLayout;
  /** Shown with the doubts, as long as there are any. */
  readonly children?: ComponentChildren;
}) {
  return (
    <>
      {doubts.length > 0 && (
        <section class="hint doubts">
          <h2>{layoutWords.pleaseCheck}</h2>
          <ul>
            {doubts.map((doubt) => (
              <li key={doubt}>{doubt}</li>
            ))}
          </ul>
          {children}
        </section>
      )}
      <details class="how-sure">
        <summary>{layoutWords.source}</summary>
        <p>{source}</p>
      </details>
    </>
  );
}
