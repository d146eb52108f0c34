// What is said of a strike that the ear took for a knock: it may be a note that was damped, or struck off its middle.
import { refusalWords } from './words';

/** `note` is the one that was expected, null where any was. */
export function knockWordsOf(note: string | null) {
  const where = note === null ? '' : ` of ${note}`;
  return {
    says: `${refusalWords.knock}:`,
    todo: `strike the middle${where} again`,
  };
}
