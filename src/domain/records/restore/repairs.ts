// The list of what was bad in something stored, each part named by its way in ("strikes[2].octave").

/** More are not listed (chosen, no source). */
const mostRepairs = 50;
/** Room for the unknown fields of one record: enough for a newer version's, and it still fits a line of a backup. */
const roomForUnknown = { parts: 5_000, characters: 100_000 };

export interface Room {
  readonly parts: number;
  readonly characters: number;
}

/** Collects repairs while a value is restored; knows where in it the restoring stands. */
export class Repairs {
  readonly #way: (string | number)[] = [];
  readonly #list: string[] = [];
  /** What is left for unknown fields. */
  room: Room = roomForUnknown;

  /** `stored`, the part called `name`, as `restore` makes it. */
  within<T>(
    name: string | number,
    restore: (stored: unknown, repairs: Repairs) => T,
    stored: unknown,
  ): T {
    this.#way.push(name);
    const value = restore(stored, this);
    this.#way.pop();
    return value;
  }

  /** Notes that something was wrong here, or with the part called `name`. After fifty, no more are added. */
  add(name?: string | number): void {
    if (this.#list.length >= mostRepairs) return;
    const way = name === undefined ? this.#way : [...this.#way, name];
    this.#list.push(way.reduce<string>(placeOf, ''));
  }

  get list(): readonly string[] {
    return this.#list;
  }
}

function placeOf(place: string, name: string | number): string {
  if (typeof name === 'number') return `${place}[${name}]`;
  return place === '' ? name : `${place}.${name}`;
}
