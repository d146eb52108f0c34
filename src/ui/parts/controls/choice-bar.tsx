// A few ways to look at the same thing, side by side: one of them is on.
import './choice-bar.css';

export function ChoiceBar<Value extends string>({
  legend,
  isSpoken = false,
  values,
  labels,
  chosen,
  onChoose,
}: {
  readonly legend: string;
  /** The legend is only said, where the place on the screen says it to the eye. */
  readonly isSpoken?: boolean;
  readonly values: readonly Value[];
  readonly labels: Readonly<Record<Value, string>>;
  readonly chosen: Value;
  readonly onChoose: (value: Value) => void;
}) {
  return (
    <fieldset class="choice-bar">
      <legend class={isSpoken ? 'only-spoken' : ''}>{legend}</legend>
      {values.map((value) => (
        <button
          key={value}
          type="button"
          aria-pressed={value === chosen}
          onClick={() => onChoose(value)}
        >
          {labels[value]}
        </button>
      ))}
    </fieldset>
  );
}
