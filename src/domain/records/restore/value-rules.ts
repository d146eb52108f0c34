// Rules that make valid values of anything: numbers in a range, texts of a length, lists of a size.
import type { Repairs } from './repairs';

/** What a rule returns for a value that cannot be used. */
export const bad: unique symbol = Symbol('bad');
export type Bad = typeof bad;

/** A valid value of anything, or `bad`. Parts that were left out of the value are noted in `repairs`. */
export type Rule<T> = (stored: unknown, repairs: Repairs) => T | Bad;

/** A finite number between `low` and `high`, as the unit that `make` gives it. */
export const numberWithin =
  <T extends number>(make: (value: number) => T, low: number, high: number): Rule<T> =>
  (stored) =>
    typeof stored === 'number' && stored >= low && stored <= high
      ? // Of the two zeros only one survives being written as JSON.
        make(stored + 0)
      : bad;

/** A whole number between `low` and `high`, as the unit that `make` gives it. */
export function wholeWithin<T extends number>(
  make: (value: number) => T,
  low: number,
  high: number,
): Rule<T> {
  const within = numberWithin(make, low, high);
  return (stored, repairs) => (Number.isInteger(stored) ? within(stored, repairs) : bad);
}

/** For numbers without a unit. */
export const plainNumber = (value: number): number => value;

/** A text, cut to `longest` characters; what it says is never judged. */
export const text =
  (longest: number): Rule<string> =>
  (stored, repairs) => {
    if (typeof stored !== 'string') return bad;
    if (stored.length <= longest) return stored;
    repairs.add();
    return cutText(stored, longest);
  };

/** A text in which there is something to see, cut to `longest` characters. */
export const visibleText =
  (longest: number): Rule<string> =>
  (stored, repairs) =>
    typeof stored === 'string' && cutText(stored, longest).trim() !== ''
      ? text(longest)(stored, repairs)
      : bad;

const identityShape = /^[A-Za-z0-9][A-Za-z0-9._:-]{0,63}$/;

/** The name of a record, pan, round or attachment: 1 to 64 letters and digits, and `. _ : -` after the first. */
export const identity =
  <T extends string>(make: (text: string) => T): Rule<T> =>
  (stored) =>
    typeof stored === 'string' && identityShape.test(stored) ? make(stored) : bad;

export const oneOf =
  <T extends string | number>(values: readonly T[]): Rule<T> =>
  (stored) =>
    values.find((value) => value === stored) ?? bad;

export const trueOrFalse: Rule<boolean> = (stored) => (typeof stored === 'boolean' ? stored : bad);

export const orNull =
  <T>(rule: Rule<T>): Rule<T | null> =>
  (stored, repairs) =>
    stored === null ? null : rule(stored, repairs);

/** A list of at most `most`; bad entries are left out. */
export const listOf =
  <T>(rule: Rule<T>, most: number): Rule<readonly T[]> =>
  (stored, repairs) => {
    if (!Array.isArray(stored)) return bad;
    if (stored.length > most) repairs.add();
    const values: T[] = [];
    const count = Math.min(stored.length, most);
    for (let k = 0; k < count; k++) {
      const value = repairs.within(k, rule, stored[k]);
      if (value === bad) repairs.add(k);
      else values.push(value);
    }
    return values;
  };

/** `long` cut to `longest` characters, never through the middle of a pair of surrogates. */
export function cutText(long: string, longest: number): string {
  if (long.length <= longest) return long;
  const last = long.charCodeAt(longest - 1);
  return long.slice(0, last >= 0xd800 && last <= 0xdbff ? longest - 1 : longest);
}
