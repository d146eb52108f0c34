// The editor of a layout: tap a note, drag it, change it; nothing is saved before "Save".
import { useState } from 'preact/hooks';
import type { LayoutFault } from '../../../domain/pans/check-layout';
import type { PanLayout } from '../../../domain/pans/layout';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import {
  createLayoutEditorModel,
  type LayoutEditorModel,
} from '../../../state/pan/layout-editor-model';
import { DrumTabs } from '../../parts/drawing/drum-tabs';
import { ChosenNote } from '../../parts/layout/chosen-note';
import { DrumTools } from '../../parts/layout/drum-tools';
import { EditableDrum } from '../../parts/layout/editable-drum';
import '../../parts/layout/layout-parts.css';
import type { NoteMark } from '../../parts/drawing/note-mark';
import { LayoutOrigin } from '../../parts/layout/layout-origin';
import '../../parts/drawing/pan-drawing.css';
import { editRefusalWords, layoutFaultWords, layoutWords } from '../../words/layout-words';
import { signedCents } from '../../words/words';

const shownFaults = 5;

export function LayoutEditor({
  layout: initial,
  onSave,
  onCancel,
}: {
  /** As it is when the editor opens; later ones are not looked at. */
  readonly layout: PanLayout;
  readonly onSave: (layout: PanLayout) => void;
  readonly onCancel: () => void;
}) {
  const [model] = useState(() => createLayoutEditorModel(initial));
  const layout = model.layout.value;
  const place = model.place.value;
  return (
    <main class="screen layout-editor">
      <header class="top">
        <h1>{layout.name}</h1>
      </header>
      <Drums model={model} />
      <Refusal model={model} />
      {place ? <ChosenNote model={model} place={place} /> : <DrumTools model={model} />}
      <Faults faults={model.faults.value} />
      <LayoutOrigin layout={layout}>
        <button type="button" onClick={model.settleDoubts}>
          {layoutWords.checked}
        </button>
      </LayoutOrigin>
      <Ending model={model} onSave={() => onSave(model.layout.value)} onCancel={onCancel} />
    </main>
  );
}

function Drums({ model }: { readonly model: LayoutEditorModel }) {
  const layout = model.layout.value;
  const drum = layout.drums[model.drum.value];
  const isSeveral = layout.drums.length > 1;
  return (
    <div class="drums-in-turn">
      {isSeveral && (
        <DrumTabs
          layout={layout}
          shown={model.drum.value}
          chosen={model.chosen.value}
          onShow={model.showDrum}
        />
      )}
      {drum && (
        <EditableDrum
          drum={drum}
          name={isSeveral ? `${layout.name}, ${drum.name}` : layout.name}
          chosen={model.chosen.value}
          markOf={marksFor(layout, model.faults.value)}
          onChoose={model.choose}
          onDragStart={model.startDrag}
          onDrag={model.dragTo}
          onNudge={model.nudge}
        />
      )}
    </div>
  );
}

/** Notes that lie over others or over the rim are dotted; an offset is written under the name. */
function marksFor(
  { drums }: PanLayout,
  faults: readonly LayoutFault[],
): (note: MidiNote) => NoteMark | null {
  const misplaced = new Set(
    faults.flatMap((fault) =>
      fault.kind === 'overlap'
        ? [fault.note, fault.other]
        : fault.kind === 'over-rim'
          ? [fault.note]
          : [],
    ),
  );
  const offsets = new Map(
    drums.flatMap(({ notes }) => notes.map(({ note, offset }) => [note, offset ?? 0] as const)),
  );
  return (note) => {
    const offset = offsets.get(note) ?? 0;
    const text = offset === 0 ? '' : signedCents(offset);
    if (misplaced.has(note)) return { text, shape: 'dotted', tone: 'stop' };
    return text === '' ? null : { text, shape: 'outline', tone: 'plain' };
  };
}

function Refusal({ model }: { readonly model: LayoutEditorModel }) {
  const refused = model.refused.value;
  return (
    <div role="status">
      {refused && (
        <p class="hint warn">
          {editRefusalWords(refused.why, refused.note === null ? null : displayName(refused.note))}
        </p>
      )}
    </div>
  );
}

function Faults({ faults }: { readonly faults: readonly LayoutFault[] }) {
  if (faults.length === 0) return null;
  const shown = faults.slice(0, shownFaults).map(layoutFaultWords);
  const more = faults.length - shown.length;
  return (
    <section class="hint">
      <h2>{layoutWords.faults}</h2>
      <ul>
        {shown.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {more > 0 && <li>{layoutWords.moreFaults(more)}</li>}
      </ul>
    </section>
  );
}

/** Undoing, saving, and leaving without it: asked once more where something would be lost. */
function Ending({
  model,
  onSave,
  onCancel,
}: {
  readonly model: LayoutEditorModel;
  readonly onSave: () => void;
  readonly onCancel: () => void;
}) {
  const [isAsking, ask] = useState(false);
  if (isAsking) {
    return (
      <footer class="actions">
        <p class="hint warn" role="alert">
          {layoutWords.loseChanges}
        </p>
        <button type="button" onClick={onCancel}>
          {layoutWords.lose}
        </button>
        <button type="button" class="main" onClick={() => ask(false)}>
          {layoutWords.goOn}
        </button>
      </footer>
    );
  }
  return (
    <footer class="actions editor-actions">
      <button type="button" disabled={!model.canUndo.value} onClick={model.undo}>
        {layoutWords.undo}
      </button>
      <button type="button" disabled={!model.canRedo.value} onClick={model.redo}>
        {layoutWords.redo}
      </button>
      <button type="button" onClick={() => (model.canUndo.value ? ask(true) : onCancel())}>
        {layoutWords.cancel}
      </button>
      <button type="button" class="main" onClick={onSave}>
        {layoutWords.save}
      </button>
    </footer>
  );
}
