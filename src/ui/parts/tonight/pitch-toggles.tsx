// Twelve names of notes, each on or off.
import { allPitchClasses, type PitchClass } from '../../../domain/knock-check/saved-tunes';
import './set-needs-form.css';

export function PitchToggles({
  legend,
  chosen,
  name,
  label = name,
  onToggle,
}: {
  readonly legend: string;
  readonly chosen: readonly PitchClass[];
  /** What stands on the button. */
  readonly name: (pitch: PitchClass) => string;
  /** What is said of it. */
  readonly label?: (pitch: PitchClass) => string;
  readonly onToggle: (chosen: readonly PitchClass[]) => void;
}) {
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      <div class="pitch-toggles">
        {allPitchClasses.map((pitch) => {
          const isOn = chosen.includes(pitch);
          return (
            <button
              key={pitch}
              type="button"
              aria-label={label(pitch)}
              aria-pressed={isOn}
              onClick={() =>
                onToggle(isOn ? chosen.filter((each) => each !== pitch) : [...chosen, pitch])
              }
            >
              {name(pitch)}
            </button>
          );
        })}
      </div>
    </fieldset>
  );
}
