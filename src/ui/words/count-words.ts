// How many of something, with its noun in the number that the count wants.

const english = new Intl.PluralRules('en');

/** `one` for a count of one, `many` for any other. */
export const pluralOf = (count: number, one: string, many: string): string =>
  english.select(count) === 'one' ? one : many;

/** "1 note", "2 notes", "0 notes". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${pluralOf(count, one, many)}`;

/** Cents without their sign and without tenths: "1 cent", "12 cents". */
export const centsWords = (cents: number): string => counted(Math.round(Math.abs(cents)), 'cent');
