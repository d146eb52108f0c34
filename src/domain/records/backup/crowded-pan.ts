// A quick look at the beginning of a file, which parses nothing: does one pan have more lines in it than any pan of ours?
import type { BackupLimits } from './backup-limits';

const mark = '"pan":"';
/** Names of pans are shorter. */
const longestName = 64;
/** How far the quick look goes, characters: part of a rack with photos, half a second. */
const furthest = 1.6e8;
/**
 * How much of an unfinished line is looked at again with the next text: a pan is named near the beginning (chosen, no
 * source).
 */
const looked = 400;

/**
 * Counts lines by the pan that each names. Reading a line in earnest takes a hundred times longer, so that a file which
 * is crowded from its beginning on is given up in a moment; any other is left to `BackupReader`, which counts as well.
 */
export class CrowdedPan {
  readonly #limits: Pick<BackupLimits, 'partsOfPan' | 'pans' | 'line'>;
  readonly #ofPan = new Map<string, number>();
  #pending = '';
  #lines = 0;
  #characters = 0;
  /** Length of the line that has no end yet. */
  #open = 0;
  #isFound = false;

  constructor(limits: Pick<BackupLimits, 'partsOfPan' | 'pans' | 'line'>) {
    this.#limits = limits;
  }

  /** One pan has too many lines, or there are too many pans. */
  get isFound(): boolean {
    return this.#isFound;
  }

  /** Nothing more needs to be looked at. */
  get isOver(): boolean {
    // As many lines as one pan may have, the header, and one more; of several pans there may be more.
    const isFar = this.#characters > furthest || this.#open > this.#limits.line;
    return this.#isFound || isFar || this.#lines > this.#limits.partsOfPan + 2;
  }

  push(piece: string): void {
    this.#characters += piece.length;
    const text = this.#pending + piece;
    let from = 0;
    let at = text.indexOf(mark);
    for (let to = text.indexOf('\n'); to >= 0 && !this.isOver; to = text.indexOf('\n', from)) {
      if (at >= 0 && at < from) at = text.indexOf(mark, from);
      if (at >= 0 && at < to) this.#count(text, at + mark.length);
      this.#lines++;
      from = to + 1;
    }
    this.#open = from === 0 ? this.#open + piece.length : text.length - from;
    this.#pending = text.slice(from, from + looked);
  }

  #count(text: string, start: number): void {
    const end = text.indexOf('"', start);
    const name = text.slice(start, Math.min(end, start + longestName));
    const count = (this.#ofPan.get(name) ?? 0) + 1;
    this.#ofPan.set(name, count);
    const { partsOfPan, pans } = this.#limits;
    if (count > partsOfPan || this.#ofPan.size > pans) this.#isFound = true;
  }
}
