// Names the note that will be struck.
import { displayName } from '../../../domain/tuning/note-names';
import { type MidiNote, midiNote } from '../../../domain/tuning/units';
import { highestNamed, lowestNamed } from '../../../state/listening/readout-model';
import { words } from '../../words/words';

const choices = Array.from({ length: highestNamed - lowestNamed + 1 }, (_, k) =>
  midiNote(highestNamed - k),
);

export function NotePicker({
  expected,
  onExpect,
}: {
  readonly expected: MidiNote | null;
  readonly onExpect: (note: MidiNote | null) => void;
}) {
  return (
    <label class="field">
      <span>{words.nameNote}</span>
      <select
        value={expected === null ? '' : String(expected)}
        onChange={(event) => {
          const { value } = event.currentTarget;
          onExpect(value === '' ? null : midiNote(Number(value)));
        }}
      >
        <option value="">{words.anyNote}</option>
        {choices.map((note) => (
          <option key={note} value={String(note)}>
            {displayName(note)}
          </option>
        ))}
      </select>
    </label>
  );
}
