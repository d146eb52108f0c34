// The fitted weights as the data file of the ear, with how they came about.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { EarWeights } from '../../src/dsp/faults/ear-scores';

export interface Fitted extends EarWeights {
  /** Sentences on how the weights came about. */
  readonly story: readonly string[];
}

const file = fileURLToPath(new URL('../../src/dsp/note/ear-weights.ts', import.meta.url));
const leftOutFile = fileURLToPath(
  new URL('../benchmarks/strikes/left-out-weights.json', import.meta.url),
);

const rows = (weights: Readonly<Record<string, number>>): string =>
  Object.entries(weights)
    .map(
      ([name, weight]) =>
        `    ${/^\w+$/.test(name) ? name : `'${name}'`}: ${Number(weight.toFixed(3))},`,
    )
    .join('\n');

export function writeWeights({ story, note, strike, expected }: Fitted): void {
  const text = `// Written by \`npm run fit:ear\`; not to be changed by hand.
${story.map((line) => `// ${line}`).join('\n')}
// What each weight is for stands in \`ear-scores\`.
export const earWeights = {
  note: {
${rows(note)}
  },
  expected: ${Number(expected.toFixed(3))},
  strike: {
${rows(strike)}
  },
};
`;
  writeFileSync(file, text);
}

/** Weights that were fitted with a note or a strength of the recordings left out, for the benchmark. */
export function writeLeftOut(leftOut: Readonly<Record<string, EarWeights>>): void {
  const rounded = JSON.stringify(
    leftOut,
    (_, value: unknown) => (typeof value === 'number' ? Number(value.toFixed(3)) : value),
    2,
  );
  writeFileSync(leftOutFile, `${rounded}\n`);
}
