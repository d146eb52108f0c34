// Fields a record has that this version does not know: a newer one wrote them, and they go with it unchanged.
import type { Repairs } from './repairs';

/** Beyond these an unknown field is left out: a file may come from anyone. */
const limits = { fields: 32, nameLength: 64, textLength: 10_000, depth: 6, parts: 2_000 };

/** The fields of `stored` that are not in `known`, as far as they are plain data of a harmless size. */
export function unknownFields(
  stored: object,
  known: ReadonlySet<string>,
  repairs: Repairs,
): Record<string, unknown> {
  const kept: Record<string, unknown> = {};
  let count = 0;
  for (const [name, value] of Object.entries(stored)) {
    if (known.has(name)) continue;
    count++;
    const isGood = count <= limits.fields && isHarmlessName(name) && isHarmless(value);
    if (isGood) kept[name] = value;
    else repairs.add(isHarmlessName(name) ? name : 'unknown field');
    if (count > limits.fields) break;
  }
  return kept;
}

/** `__proto__` as a name would change what the object is. */
const isHarmlessName = (name: string): boolean =>
  name.length <= limits.nameLength && name !== '__proto__';

/** Plain data that is the same after it was written as JSON and read again. */
function isHarmless(value: unknown): boolean {
  let parts = 0;
  const isGood = (part: unknown, depth: number): boolean => {
    parts++;
    if (parts > limits.parts || depth > limits.depth) return false;
    if (typeof part === 'string') return part.length <= limits.textLength;
    if (typeof part === 'number') return Number.isFinite(part) && !Object.is(part, -0);
    if (part === null || typeof part === 'boolean') return true;
    if (Array.isArray(part)) {
      // A list with holes is not the same after JSON.
      for (let k = 0; k < part.length; k++) if (!isGood(part[k], depth + 1)) return false;
      return true;
    }
    if (typeof part !== 'object' || !isPlain(part)) return false;
    return Object.entries(part).every(
      ([name, each]) => isHarmlessName(name) && isGood(each, depth + 1),
    );
  };
  return isGood(value, 0);
}

const isPlain = (value: object): boolean =>
  Object.getPrototypeOf(value) === Object.prototype &&
  Object.getOwnPropertySymbols(value).length === 0;
