// The table of the benchmark: one row a target, the figure beside it, and whether it is met.

export interface Row {
  readonly quantity: string;
  /** In words; empty for a figure that is only printed. */
  readonly target: string;
  readonly measured: string;
  /** Null for a figure without a target. */
  readonly isMet: boolean | null;
  /** Why the target is not met; printed only then. */
  readonly whyNot?: string | undefined;
}

const widths = [66, 16, 9] as const;

/** Prints one row as soon as it is known. */
export function printRow({ quantity, target, measured, isMet, whyNot }: Row): void {
  const word = isMet === null ? '' : isMet ? 'met' : 'NOT met';
  printLine(quantity, target, word, measured);
  if (isMet === false) printLine('', '', '', `because: ${whyNot ?? 'the reason is not known yet'}`);
}

export function printHeading(): void {
  process.stdout.write('\n');
  printLine('quantity', 'target', '', 'measured');
}

function printLine(quantity: string, target: string, word: string, measured: string): void {
  const cells = [quantity, target, word].map((cell, n) => cell.padEnd((widths[n] ?? 0) - 1));
  process.stdout.write(`${[...cells, measured].join(' ')}\n`);
}
