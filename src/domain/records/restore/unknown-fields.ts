// Fields of a record that this version does not know: a newer one wrote them, and they are kept unchanged.
import type { Repairs, Room } from './repairs';

/** Beyond these, and beyond the room of the whole record, an unknown field is left out: a file may come from anyone. */
const limits = { fields: 32, nameLength: 64, depth: 6 };

/** The fields of `stored` that are not in `known`, as far as they are plain data of a harmless size. */
export function unknownFields(
  stored: object,
  known: ReadonlySet<string>,
  repairs: Repairs,
): Record<string, unknown> {
  const kept: Record<string, unknown> = {};
  let count = 0;
  for (const name of Object.keys(stored)) {
    if (known.has(name)) continue;
    count++;
    const value = (stored as Record<string, unknown>)[name];
    const room = count <= limits.fields ? roomBeside({ [name]: value }, repairs.room) : null;
    if (room) {
      repairs.room = room;
      kept[name] = value;
    } else {
      repairs.add(isHarmlessName(name) ? name : 'unknown field');
    }
    if (count > limits.fields) break;
  }
  return kept;
}

/** `__proto__` as a name would change what the object is. */
const isHarmlessName = (name: string): boolean =>
  name.length <= limits.nameLength && name !== '__proto__';

/** The room that `value` leaves, or null if it is too large or no plain data that JSON can hold unchanged. */
function roomBeside(value: unknown, room: Room): Room | null {
  let { parts, characters } = room;
  const isHarmless = (part: unknown, depth: number): boolean => {
    parts--;
    if (typeof part === 'string') characters -= part.length;
    if (parts < 0 || characters < 0 || depth > limits.depth) return false;
    if (part === null || typeof part === 'boolean' || typeof part === 'string') return true;
    if (typeof part === 'number') return Number.isFinite(part) && !Object.is(part, -0);
    if (Array.isArray(part)) return isHarmlessList(part, depth);
    return typeof part === 'object' && isPlain(part) && isHarmlessObject(part, depth);
  };
  const isHarmlessList = (list: readonly unknown[], depth: number): boolean => {
    // A list with holes does not survive JSON unchanged: a hole counts as undefined, which is bad.
    for (let k = 0; k < list.length; k++) if (!isHarmless(list[k], depth + 1)) return false;
    return true;
  };
  const isHarmlessObject = (fields: object, depth: number): boolean =>
    Object.keys(fields).every((name) => {
      characters -= name.length;
      return (
        isHarmlessName(name) && isHarmless((fields as Record<string, unknown>)[name], depth + 1)
      );
    });
  return isHarmless(value, 0) ? { parts, characters } : null;
}

const isPlain = (value: object): boolean =>
  Object.getPrototypeOf(value) === Object.prototype &&
  Object.getOwnPropertySymbols(value).length === 0;
