// Arrays for intermediate results, made once and lent again for every strike.

/** Length of the arrays on the first shelf; every further shelf holds arrays twice as long (chosen, no source). */
const shortest = 16;

interface Shelf {
  readonly arrays: Float64Array[];
  lent: number;
}

/**
 * Lends arrays of at least the asked length, and takes back all that were lent since a mark. Old values are left
 * in them, and beyond the asked length they go on: whoever borrows counts for himself.
 */
export class WorkArrays {
  readonly #shelves: Shelf[] = [];
  /** Shelf of every array that is lent, in order. */
  readonly #order: number[] = [];

  /** An array of at least `length`; what is in it is left over from before. */
  take(length: number): Float64Array {
    const number = Math.max(0, 32 - Math.clz32(Math.max(0, Math.ceil(length / shortest) - 1)));
    while (this.#shelves.length <= number) this.#shelves.push({ arrays: [], lent: 0 });
    const shelf = this.#shelves[number];
    this.#order.push(number);
    const known = shelf.arrays[shelf.lent++];
    if (known) return known;
    const made = new Float64Array(shortest * 2 ** number);
    shelf.arrays.push(made);
    return made;
  }

  /** The same with zeros in the asked length. */
  zeros(length: number): Float64Array {
    return this.take(length).fill(0, 0, length);
  }

  /** To be handed to `release`. */
  mark(): number {
    return this.#order.length;
  }

  /** Takes back everything lent since `mark`; nobody may use it any more. */
  release(mark: number): void {
    for (; this.#order.length > mark; this.#order.length--) {
      this.#shelves[this.#order[this.#order.length - 1]].lent--;
    }
  }
}
