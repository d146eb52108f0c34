// The rows on bass notes; no target.
import { lowNotes } from './low-notes';
import type { Row } from './print-table';
import { seedsFrom } from './seeds';
import { median, percentOf, quantile } from './statistics';
import { countOf } from './which-note';

export function lowNoteRows(): readonly Row[] {
  const { outcomes, octaveErrors, inferred } = lowNotes(seedsFrom(3001, 100));
  const right = percentOf(outcomes, (each) => each === 'right');
  return [
    {
      quantity: 'low notes, B0 to B2, the pan as candidates',
      target: '',
      measured: `${right.toFixed(0)} % of ${outcomes.length} right; ${countOf(outcomes, 'asked')} asked, ${countOf(outcomes, 'wrong')} wrong, ${countOf(outcomes, 'refused')} refused; octave p50 ${median(octaveErrors).toFixed(3)}, p95 ${quantile(octaveErrors, 0.95).toFixed(3)} cent; ${inferred} inferred`,
      isMet: null,
    },
  ];
}
