// A rule for an object, made of one rule for each of its fields: a table that must name every field.
import type { Repairs } from './repairs';
import { unknownFields } from './unknown-fields';
import { bad, type Rule } from './value-rules';

export interface FieldRule<T> {
  readonly rule: Rule<T>;
  /** What a bad or missing value means: the whole object is bad, another value stands in, or the field is left out. */
  readonly otherwise:
    | { readonly kind: 'all-bad' }
    | { readonly kind: 'instead'; readonly value: T; readonly mayBeMissing: boolean }
    | { readonly kind: 'left-out' };
}

export const needed = <T>(rule: Rule<T>): FieldRule<T> => ({
  rule,
  otherwise: { kind: 'all-bad' },
});

export const orElse = <T>(rule: Rule<T>, value: T): FieldRule<T> => ({
  rule,
  otherwise: { kind: 'instead', value, mayBeMissing: false },
});

/** For fields that were added later: a missing one takes `value`, which does not count as a repair. */
export const orUsual = <T>(rule: Rule<T>, value: T): FieldRule<T> => ({
  rule,
  otherwise: { kind: 'instead', value, mayBeMissing: true },
});

export const optional = <T>(rule: Rule<T>): FieldRule<T> => ({
  rule,
  otherwise: { kind: 'left-out' },
});

export type FieldRules<T> = { readonly [K in keyof T]-?: FieldRule<Exclude<T[K], undefined>> };

/** An object with the fields of `rules`; fields that no rule knows are kept as they are. */
export function fieldsOf<T extends object>(rules: FieldRules<T>): Rule<T> {
  const table = Object.entries(rules) as [string, FieldRule<unknown>][];
  const names = new Set(table.map(([name]) => name));
  return (stored, repairs) => {
    if (typeof stored !== 'object' || stored === null || Array.isArray(stored)) return bad;
    const fields: Record<string, unknown> = {};
    let known = 0;
    for (const [name, field] of table) {
      const isOwn = Object.hasOwn(stored, name);
      if (isOwn) known++;
      const part = isOwn ? (stored as Record<string, unknown>)[name] : undefined;
      const isThere = part !== undefined;
      const value = isThere ? repairs.within(name, field.rule, part) : bad;
      if (value !== bad) fields[name] = value;
      else if (!standIn(fields, name, field, isThere, repairs)) return bad;
    }
    // Thousands are read to show one note, so a field that hardly any of them has must cost nothing.
    if (Object.keys(stored).length === known) return fields as T;
    return { ...fields, ...unknownFields(stored, names, repairs) } as T;
  };
}

/** Deals with a bad or missing field; false if the whole object is bad without it. */
function standIn(
  fields: Record<string, unknown>,
  name: string,
  { otherwise }: FieldRule<unknown>,
  isThere: boolean,
  repairs: Repairs,
): boolean {
  switch (otherwise.kind) {
    case 'all-bad':
      repairs.add(name);
      return false;
    case 'instead':
      if (isThere || !otherwise.mayBeMissing) repairs.add(name);
      fields[name] = otherwise.value;
      return true;
    case 'left-out':
      if (isThere) repairs.add(name);
      return true;
  }
}
