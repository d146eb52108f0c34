// Which of the troubles that the screen has a sentence for an error of the database is.
import type { StoreTrouble } from '../../domain/ports/pan-store';

/** The database could not be opened. */
export class OpeningFailed extends Error {
  override readonly name = 'OpeningFailed';
  readonly trouble: StoreTrouble;

  constructor(trouble: StoreTrouble, cause?: unknown) {
    super(`The database could not be opened: ${cause instanceof Error ? cause.message : trouble}`, {
      cause,
    });
    this.trouble = trouble;
  }

  static because(error: unknown): OpeningFailed {
    return new OpeningFailed(openingTrouble(error), error);
  }
}

/** The phone or the browser's share of it is full. */
export const isFull = (error: unknown): boolean => nameOf(error) === 'QuotaExceededError';

/** The trouble behind an error of opening, reading or writing. */
export function storeTrouble(error: unknown): StoreTrouble {
  if (error instanceof OpeningFailed) return error.trouble;
  return isFull(error) ? 'full' : 'failed';
}

function openingTrouble(error: unknown): StoreTrouble {
  switch (nameOf(error)) {
    case 'VersionError':
      return 'newer';
    case 'QuotaExceededError':
      return 'full';
    // Storage is refused: by the user's choice, or by a private window (Firefox says InvalidStateError).
    case 'SecurityError':
    case 'InvalidStateError':
    case 'NotAllowedError':
    // There is no `indexedDB` at all, or it is undefined.
    case 'ReferenceError':
    case 'TypeError':
      return 'unavailable';
    default:
      return 'failed';
  }
}

/** Works for a DOMException too, which is not an Error everywhere. */
function nameOf(error: unknown): string {
  const isNamed = typeof error === 'object' && error !== null && 'name' in error;
  return isNamed && typeof error.name === 'string' ? error.name : '';
}
