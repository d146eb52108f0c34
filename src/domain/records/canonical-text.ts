// Plain data as the same text on every phone, whatever order its fields were written in.
import { compareText } from './record-order';

/** JSON of plain data with the fields of every object in order of their names. */
export const canonicalText = (value: unknown): string => JSON.stringify(value, sorted) ?? 'null';

function sorted(_name: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value).sort(([one], [other]) => compareText(one, other)),
  );
}
