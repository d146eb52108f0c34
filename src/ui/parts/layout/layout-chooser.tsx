// Chooses the family and layout of a pan: drawn, with its source and what is doubtful about it.
import { useState } from 'preact/hooks';
import { notesOf, type PanLayout } from '../../../domain/pans/layout';
import {
  type BuiltInLayout,
  builtInLayouts,
  layoutsOf,
} from '../../../domain/pans/layouts/built-in-layouts';
import { mirrored } from '../../../domain/pans/mirrored';
import type { PanFamily } from '../../../domain/pans/pan-family';
import { displayName } from '../../../domain/tuning/note-names';
import { layoutWords } from '../../words/layout-words';
import { LayoutOrigin } from './layout-origin';
import './layout-parts.css';
import { familyTitle } from '../../words/family-words';
import { PanDrawing } from '../drawing/pan-drawing';

export interface ChosenLayout {
  readonly family: PanFamily;
  readonly layout: PanLayout;
  /** `unplaced`: its notes are to be arranged in the editor before they are used. */
  readonly kind: BuiltInLayout['kind'];
}

const families: readonly PanFamily[] = [...new Set(builtInLayouts.map(({ family }) => family))];

export function LayoutChooser({
  family: initial = 'lead',
  onTake,
}: {
  readonly family?: PanFamily;
  readonly onTake: (choice: ChosenLayout) => void;
}) {
  const [family, setFamily] = useState<PanFamily>(initial);
  const [id, setId] = useState<string | null>(null);
  const [isMirrored, mirror] = useState(false);
  const offered = layoutsOf(family);
  const entry = offered.find(({ layout }) => layout.id === id) ?? offered[0];
  if (!entry) return null;
  const layout = entry.isMirroredToo && isMirrored ? mirrored(entry.layout) : entry.layout;
  return (
    <div class="layout-chooser">
      <label class="field">
        <span>{layoutWords.family}</span>
        <select
          value={family}
          onChange={(event) => {
            const found = families.find((name) => name === event.currentTarget.value);
            if (!found) return;
            setFamily(found);
            setId(null);
          }}
        >
          {families.map((name) => (
            <option key={name} value={name}>
              {familyTitle(name)}
            </option>
          ))}
        </select>
      </label>
      {offered.length > 1 && (
        <fieldset class="field">
          <legend>{layoutWords.layout}</legend>
          {offered.map((other) => (
            <label class="choice" key={other.layout.id}>
              <input
                type="radio"
                name="layout"
                checked={other === entry}
                onChange={() => setId(other.layout.id)}
              />
              {other.layout.name}
            </label>
          ))}
        </fieldset>
      )}
      {entry.isMirroredToo && (
        <label class="choice">
          <input
            type="checkbox"
            checked={isMirrored}
            onChange={(event) => mirror(event.currentTarget.checked)}
          />
          <span>
            {layoutWords.mirror}
            <span class="aside">{layoutWords.mirrorHint}</span>
          </span>
        </label>
      )}
      <Extent layout={layout} />
      <PanDrawing key={layout.id} layout={layout} />
      <LayoutOrigin layout={layout} />
      <button
        type="button"
        class="main"
        onClick={() => onTake({ family, layout, kind: entry.kind })}
      >
        {entry.kind === 'placed' ? layoutWords.take : layoutWords.arrange}
      </button>
    </div>
  );
}

/** How many notes, on how many drums, from where to where. */
function Extent({ layout }: { readonly layout: PanLayout }) {
  const notes = notesOf(layout);
  const [lowest, highest] = [notes[0], notes.at(-1)];
  return (
    <p class="extent">
      {layoutWords.noteCount(notes.length, layout.drums.length)}
      {lowest !== undefined && highest !== undefined && (
        <> · {layoutWords.range(displayName(lowest), displayName(highest))}</>
      )}
    </p>
  );
}
