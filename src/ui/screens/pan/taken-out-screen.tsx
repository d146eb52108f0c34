// What was taken out of a pan in the last week, each with the button that brings it back.
import { takenOut } from '../../../domain/records/standing/taken-out';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { takenOutTitle, takenOutWhen, undoWords } from '../../words/keeping/undo-words';
import { words } from '../../words/words';
import '../../parts/drawing/note-rows.css';

type Models = Needs<'pan' | 'now'>;

export function TakenOutScreen({ models }: { readonly models: Models }) {
  const { pan: model, now } = models;
  return (
    <PanGate model={model}>
      {(pan) => {
        const all = takenOut(pan.records, now());
        return (
          <main class="screen">
            <header class="top">
              <h1>{undoWords.title}</h1>
              <span>{pan.current.fields.name}</span>
            </header>
            <p class="hint">{all.length === 0 ? undoWords.none : undoWords.why}</p>
            <ul class="plain-rows">
              {all.map((out) => (
                <li key={out.by} class="hint" data-taken-out={out.kind}>
                  <p>
                    <b>{takenOutTitle(out)}</b> <span class="aside">{takenOutWhen(out)}</span>
                  </p>
                  <button
                    type="button"
                    aria-label={`${out.kind === 'mark' ? undoWords.unmark : undoWords.putBack}: ${takenOutTitle(out)}`}
                    onClick={() => void model.erase(out.by)}
                  >
                    {out.kind === 'mark' ? undoWords.unmark : undoWords.putBack}
                  </button>
                </li>
              ))}
            </ul>
            <p class="quiet">{undoWords.photos}</p>
            <NotKept keeper={model} />
            <footer class="actions">
              <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
                {words.back}
              </a>
            </footer>
          </main>
        );
      }}
    </PanGate>
  );
}
