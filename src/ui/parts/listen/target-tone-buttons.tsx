// The tone that a note should have, and those of its partials, held as long as wanted.
import { useLayoutEffect, useState } from 'preact/hooks';
import type { NoteWish } from '../../../domain/reading/judge-note';
import { frequencyOf } from '../../../domain/tuning/equal-temperament';
import { displayName } from '../../../domain/tuning/note-names';
import { type Hertz, hertz, type MidiNote, shiftedBy } from '../../../domain/tuning/units';
import type { TargetTone } from '../../../state/listening/target-tone';
import { targetToneWords } from '../../words/measuring/sound-words';
import { words } from '../../words/words';
import { ChoiceBar } from '../controls/choice-bar';
import './target-tone-buttons.css';

/** Small loudspeakers play little below this, Hz (common practice, no source). */
const deepHz = 200;

export function TargetToneButtons({
  tone,
  note,
  wish,
  bandA4,
  panA4,
}: {
  readonly tone: TargetTone;
  readonly note: MidiNote;
  readonly wish: NoteWish;
  readonly bandA4: Hertz;
  /** Null where the pan's own pitch is not known. */
  readonly panA4: Hertz | null;
}) {
  const [whose, setWhose] = useState<'band' | 'pan'>('band');
  useLayoutEffect(() => tone.stop, [tone, note]);
  const a4 = whose === 'pan' && panA4 ? panA4 : bandA4;
  const own = shiftedBy(frequencyOf(note, a4), wish.offset ?? 0);
  const thirds = (['twelfth', 'double-octave'] as const).filter(
    (kind) => wish.third === undefined || wish.third === kind,
  );
  const tones = [
    { name: displayName(note), hz: own },
    { name: words.octave, hz: hertz(2 * own) },
    ...thirds.map((kind) => ({
      name: words.third[kind],
      hz: hertz((kind === 'twelfth' ? 3 : 4) * own),
    })),
  ];
  return (
    <section class="form target-tone">
      <h2>{targetToneWords.title}</h2>
      <p class="quiet">{targetToneWords.why}</p>
      {panA4 && (
        <ChoiceBar
          legend={targetToneWords.against}
          values={['band', 'pan']}
          labels={targetToneWords.pitch}
          chosen={whose}
          onChoose={(chosen) => {
            tone.stop();
            setWhose(chosen);
          }}
        />
      )}
      <div class="tones">
        {tones.map(({ name, hz }) => (
          <button
            key={name}
            type="button"
            aria-pressed={tone.sounding.value === hz}
            data-hz={hz.toFixed(2)}
            onClick={() => void tone.toggle(hz)}
          >
            {name}
          </button>
        ))}
      </div>
      {own < deepHz && <p class="hint">{targetToneWords.low}</p>}
    </section>
  );
}
