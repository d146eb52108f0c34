// The row on blows and voices that are no notes.
import { type NonStrike, seededNonStrikes, takenAsStrikes } from './non-strike-cases';
import type { Row } from './print-table';

export async function nonStrikeRows(): Promise<readonly Row[]> {
  const cases: readonly NonStrike[] = seededNonStrikes(100);
  const taken = takenAsStrikes(cases);
  return [
    {
      quantity: 'no strikes taken as a strike',
      target: '<= 2 %',
      measured: `${((100 * taken.length) / cases.length).toFixed(1)} % of ${cases.length} cases${taken.length > 0 ? ` (${taken.join(', ')})` : ''}`,
      isMet: taken.length / cases.length <= 0.02,
    },
  ];
}
