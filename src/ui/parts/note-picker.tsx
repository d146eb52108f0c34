// Names the note that will be struck.
import { displayName } from '../../domain/tuning/note-names';
import { type MidiNote, midiNote } from '../../domain/tuning/units';
import { words } from '../words';

/** B0 to G6: from the lowest twelve bass to the highest lead. */
const lowest = 23;
const highest = 91;
const choices = Array.from({ length: highest - lowest + 1 }, (_, k) => midiNote(highest - k));

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
