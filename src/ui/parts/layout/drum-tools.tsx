// What can be changed about the shown drum and the whole pan while no note is chosen.
import { displayName } from '../../../domain/tuning/note-names';
import type { LayoutEditorModel } from '../../../state/pan/layout-editor-model';
import { layoutWords } from '../../words/layout-words';

/** A quarter of an hour on the clock face is 7.5°: fine enough for a groove, quick enough for a whole turn. */
const turnStep = 0.25;

export function DrumTools({ model }: { readonly model: LayoutEditorModel }) {
  const { drums } = model.layout.value;
  const shown = model.drum.value;
  const drum = drums[shown];
  const isSeveral = drums.length > 1;
  return (
    <section class="editing">
      <p>{layoutWords.tapNote}</p>
      <button type="button" onClick={model.add}>
        {layoutWords.add(displayName(model.proposed.value))}
      </button>
      <h2>{isSeveral && drum ? layoutWords.thisDrum(drum.name) : layoutWords.onlyDrum}</h2>
      <div class="pair">
        <button type="button" onClick={() => model.turn(-turnStep)}>
          {layoutWords.turnLeft}
        </button>
        <button type="button" onClick={() => model.turn(turnStep)}>
          {layoutWords.turnRight}
        </button>
        <button type="button" onClick={model.mirrorDrum}>
          {layoutWords.mirrorDrum}
        </button>
        {isSeveral && drum?.notes.length === 0 && (
          <button type="button" onClick={model.removeDrum}>
            {layoutWords.removeDrum}
          </button>
        )}
      </div>
      {isSeveral && (
        <label class="field">
          <span>{layoutWords.changePlaces}</span>
          <select
            value=""
            onChange={(event) => {
              const { value } = event.currentTarget;
              if (value !== '') model.changePlaces(Number(value));
              event.currentTarget.value = '';
            }}
          >
            <option value="">{layoutWords.choose}</option>
            {drums.map((other, k) =>
              k === shown ? null : (
                <option key={String(k)} value={String(k)}>
                  {other.name}
                </option>
              ),
            )}
          </select>
        </label>
      )}
      <h2>{layoutWords.wholePan}</h2>
      <div class="pair">
        {isSeveral && (
          <button type="button" onClick={model.mirrorPan}>
            {layoutWords.mirrorPan}
          </button>
        )}
        <button type="button" onClick={model.addDrum}>
          {layoutWords.addDrum}
        </button>
      </div>
    </section>
  );
}
