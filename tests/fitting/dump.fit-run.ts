import { writeFileSync } from 'node:fs';
import { test } from 'vitest';
import { strikeFeatureNames } from '../../src/dsp/faults/strike-features';
import { noteFeatureNames } from '../../src/dsp/note/note-features';
import { cutExamples, isCut } from './cut-examples';
import { seenExamples } from './ear-features';
test('dump', () => {
  writeFileSync('/tmp/names.json', JSON.stringify([noteFeatureNames, strikeFeatureNames]));
  for (const name of (process.env['ONLY'] ?? 'real,drum,speech,blow,bank,bass,scene').split(',')) {
    if (!isCut(name)) continue;
    const seen = seenExamples(name, cutExamples(name, () => []));
    writeFileSync(`/tmp/seen-${name}.jsonl`, seen.map((each) => JSON.stringify(each, (_, v) => v instanceof Float64Array ? Array.from(v, (x) => Number(x.toFixed(4))) : v)).join('\n'));
    process.stdout.write(`${name} ${performance.now()}\n`);
  }
});
