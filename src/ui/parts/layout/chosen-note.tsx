// What can be changed about the chosen note of a layout.
import { hasNote } from '../../../domain/pans/edit-layout';
import type { NotePlace, ThirdWish } from '../../../domain/pans/layout';
import { displayName } from '../../../domain/tuning/note-names';
import { midiNote } from '../../../domain/tuning/units';
import { highestNamed, lowestNamed } from '../../../state/listening/readout-model';
import type { LayoutEditorModel } from '../../../state/pan/layout-editor-model';
import { layoutWords } from '../../words/layout-words';

const nameable = Array.from({ length: highestNamed - lowestNamed + 1 }, (_, k) =>
  midiNote(highestNamed - k),
);
const wishes: readonly ThirdWish[] = ['twelfth', 'double-octave', 'none'];

export function ChosenNote({
  model,
  place,
}: {
  readonly model: LayoutEditorModel;
  readonly place: NotePlace;
}) {
  const layout = model.layout.value;
  const { note } = place;
  return (
    <section class="editing" aria-label={displayName(note)}>
      <div class="top">
        <h2>{displayName(note)}</h2>
        <span>{layoutWords.dragNote}</span>
      </div>
      <div class="pair">
        <label class="field">
          <span>{layoutWords.note}</span>
          <select
            // Shown again as it is after a refusal.
            key={`${note} ${model.refused.value?.note ?? ''}`}
            value={String(note)}
            onChange={(event) => model.rename(midiNote(Number(event.currentTarget.value)))}
          >
            {nameable.map((name) => (
              <option key={name} value={String(name)}>
                {name !== note && hasNote(layout, name)
                  ? layoutWords.onThePan(displayName(name))
                  : displayName(name)}
              </option>
            ))}
          </select>
        </label>
        <label class="field">
          <span>{layoutWords.third}</span>
          <select
            value={place.third ?? ''}
            onChange={(event) =>
              model.setThird(wishes.find((wish) => wish === event.currentTarget.value) ?? null)
            }
          >
            <option value="">{layoutWords.findOut}</option>
            {wishes.map((wish) => (
              <option key={wish} value={wish}>
                {layoutWords.thirds[wish]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <Offset model={model} place={place} />
      {layout.drums.length > 1 && (
        <label class="field">
          <span>{layoutWords.standsOn}</span>
          <select
            value={String(model.drum.value)}
            onChange={(event) => model.moveToDrum(Number(event.currentTarget.value))}
          >
            {layout.drums.map((drum, k) => (
              <option key={String(k)} value={String(k)}>
                {drum.name}
              </option>
            ))}
          </select>
        </label>
      )}
      <div class="pair">
        <button type="button" onClick={model.remove}>
          {layoutWords.remove(displayName(note))}
        </button>
        <button type="button" onClick={() => model.choose(null)}>
          {layoutWords.close}
        </button>
      </div>
    </section>
  );
}

/** Two big buttons and a number between them. */
function Offset({
  model,
  place,
}: {
  readonly model: LayoutEditorModel;
  readonly place: NotePlace;
}) {
  const offset = place.offset ?? 0;
  return (
    <div class="field">
      <label for="note-offset">{layoutWords.offset}</label>
      <div class="stepper">
        <button
          type="button"
          aria-label={layoutWords.offsetLess}
          onClick={() => model.setOffset(offset - 1)}
        >
          −
        </button>
        <input
          id="note-offset"
          inputMode="text"
          autocomplete="off"
          aria-describedby="note-offset-hint"
          value={String(offset).replace('-', '−')}
          onChange={(event) => {
            const typed = event.currentTarget.value.trim().replace(',', '.').replace('−', '-');
            if (typed !== '') model.setOffset(Number(typed));
            // What was no number is put back.
            event.currentTarget.value = String(model.place.value?.offset ?? 0).replace('-', '−');
          }}
        />
        <button
          type="button"
          aria-label={layoutWords.offsetMore}
          onClick={() => model.setOffset(offset + 1)}
        >
          +
        </button>
      </div>
      <p id="note-offset-hint" class="aside">
        {layoutWords.offsetHint}
      </p>
    </div>
  );
}
