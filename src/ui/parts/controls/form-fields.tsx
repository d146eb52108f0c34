// Fields of a form: a label, an input, and what is wrong or helpful below it.
import type { ComponentChildren } from 'preact';
import './form-fields.css';

/** Far more digits than any number needs. */
const longestNumber = 40;

type TextFieldProps = {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: string | null;
  readonly isBad?: boolean;
  readonly long?: boolean;
  readonly onInput: (value: string) => void;
} & (
  | { readonly inputMode: 'decimal'; readonly longest?: undefined }
  /** As much as what keeps the text can hold: it is cut to that when it is read again. */
  | { readonly inputMode?: 'text'; readonly longest: number }
);

export function TextField({
  id,
  label,
  value,
  hint = null,
  isBad = false,
  inputMode = 'text',
  longest = longestNumber,
  long = false,
  onInput,
}: TextFieldProps) {
  const attributes = {
    id,
    autocomplete: 'off',
    maxLength: longest,
    value,
    'aria-invalid': isBad,
    ...(hint === null ? {} : { 'aria-describedby': `${id}-hint` }),
  } as const;
  return (
    <FieldFrame id={id} label={label} hint={hint} isBad={isBad}>
      {long ? (
        <textarea
          {...attributes}
          rows={3}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
      ) : (
        <input
          {...attributes}
          inputMode={inputMode}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
      )}
    </FieldFrame>
  );
}

/** A day, or a day and a time, chosen with the phone's own picker; the value is as the field gives it. */
export function MomentField({
  id,
  label,
  type,
  value,
  hint = null,
  isBad = false,
  onInput,
}: {
  readonly id: string;
  readonly label: string;
  readonly type: 'date' | 'datetime-local';
  readonly value: string;
  readonly hint?: string | null;
  readonly isBad?: boolean;
  readonly onInput: (value: string) => void;
}) {
  return (
    <FieldFrame id={id} label={label} hint={hint} isBad={isBad}>
      <input
        id={id}
        type={type}
        value={value}
        aria-invalid={isBad}
        {...(hint === null ? {} : { 'aria-describedby': `${id}-hint` })}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
    </FieldFrame>
  );
}

function FieldFrame({
  id,
  label,
  hint,
  isBad,
  children,
}: {
  readonly id: string;
  readonly label: string;
  readonly hint: string | null;
  readonly isBad: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {children}
      {hint !== null && (
        <p
          id={`${id}-hint`}
          class={isBad ? 'hint warn' : 'aside'}
          role={isBad ? 'alert' : undefined}
        >
          {hint}
        </p>
      )}
    </div>
  );
}

/** One of a few choices, each a line of its own. */
export function Choices<Value extends string>({
  name,
  legend,
  values,
  labels,
  chosen,
  onChoose,
  children,
}: {
  readonly name: string;
  readonly legend: string;
  readonly values: readonly Value[];
  readonly labels: Readonly<Record<Value, string>>;
  readonly chosen: Value | null;
  readonly onChoose: (value: Value) => void;
  readonly children?: ComponentChildren;
}) {
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      {values.map((value) => (
        <label key={value} class="choice">
          <input
            type="radio"
            name={name}
            checked={value === chosen}
            onChange={() => onChoose(value)}
          />
          {labels[value]}
        </label>
      ))}
      {children}
    </fieldset>
  );
}

/** A number that a person typed, with a point or a comma; null if it is none. */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}
