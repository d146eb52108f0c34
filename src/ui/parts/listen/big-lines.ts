// How a sentence of the readout is set as big as a verdict: at most two lines of it, the rest small beneath.

/** Letters of a line that need not be narrowed much on the smallest phone (tried at 320 px). */
const shortLine = 7;

export interface BigLines {
  readonly lines: readonly string[];
  /** What to do, or null. */
  readonly todo: string | null;
}

/** "too fast, one strike at a time" is "too fast" and what to do; a longer head is broken where its halves are most even. */
export function bigLines(sentence: string): BigLines {
  const [, head = sentence, todo] = /^([^,:]+)[,:] (.+)$/.exec(sentence) ?? [];
  const parts = head.split(' ');
  const breaks = parts
    .slice(1)
    .map((_, k) => [parts.slice(0, k + 1).join(' '), parts.slice(k + 1).join(' ')] as const)
    .sort((one, other) => longest(one) - longest(other));
  const [best] = breaks;
  const lines = best && head.length > shortLine ? best : [head];
  return { lines, todo: todo ?? null };
}

const longest = (lines: readonly string[]): number =>
  Math.max(...lines.map(({ length }) => length));
