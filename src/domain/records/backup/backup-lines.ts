// Cuts the text of a file, which comes in pieces of any size, into lines of a limited length.

export type FileLine =
  | { readonly kind: 'line'; readonly text: string }
  /** Longer than any line may be: it was not kept. */
  | { readonly kind: 'too-long' };

export class LineCutter {
  #pending = '';
  #isTooLong = false;
  #openLength = 0;

  constructor(readonly longest: number) {}

  /** Characters of the line that has no end yet, also of those that were not kept. */
  get openLength(): number {
    return this.#openLength;
  }

  /** The lines that `text` completes, without their line breaks (LF or CRLF). */
  *push(text: string): Generator<FileLine> {
    let from = 0;
    for (let to = text.indexOf('\n'); to >= 0; to = text.indexOf('\n', from)) {
      this.#hold(text, from, to);
      yield this.#taken();
      from = to + 1;
    }
    this.#hold(text, from, text.length);
  }

  /** What is left after the last line break, or null if it is nothing. */
  end(): FileLine | null {
    return this.#isTooLong || this.#pending !== '' ? this.#taken() : null;
  }

  #hold(text: string, from: number, to: number): void {
    this.#openLength += to - from;
    if (this.#isTooLong) return;
    if (this.#pending.length + to - from <= this.longest) {
      this.#pending += text.slice(from, to);
      return;
    }
    this.#isTooLong = true;
    this.#pending = '';
  }

  #taken(): FileLine {
    const line: FileLine = this.#isTooLong
      ? { kind: 'too-long' }
      : { kind: 'line', text: this.#pending.replace(/\r$/, '') };
    this.#pending = '';
    this.#isTooLong = false;
    this.#openLength = 0;
    return line;
  }
}
