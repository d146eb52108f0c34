// Tables of outcomes: one row a group, one column an outcome.
import type { Outcome } from './hear-take';

export const print = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

export const percent = (part: number, whole: number): string =>
  whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`;

/** Counts of each outcome, the most frequent first: "170 right, 5 unclear". */
export function countsOf(outcomes: readonly Outcome[]): string {
  const counts = new Map<Outcome, number>();
  for (const each of outcomes) counts.set(each, (counts.get(each) ?? 0) + 1);
  return [...counts]
    .sort(([, a], [, b]) => b - a)
    .map(([outcome, count]) => `${count} ${outcome}`)
    .join(', ');
}

export const rightOf = (outcomes: readonly Outcome[]): string =>
  percent(outcomes.filter((each) => each === 'right').length, outcomes.length);

/** Parts `items` by `keyOf`, in the order of their first appearance. */
export function groupsOf<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
): ReadonlyMap<string, readonly Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group) group.push(item);
    else groups.set(keyOf(item), [item]);
  }
  return groups;
}
