// The row on blows and voices that are no notes.
import { type NonStrike, seededNonStrikes, takenAsStrikes } from './non-strike-cases';
import type { Row } from './print-table';

/** The wider row of cases with recorded ones; without it the benchmark takes its own. */
const wider = import.meta.glob<{
  readonly nonStrikes: (count: number) => Promise<readonly NonStrike[]>;
}>('../../sounds/non-strikes.ts');

export async function nonStrikeRows(): Promise<readonly Row[]> {
  const [load] = Object.values(wider);
  const rows = [rowOf('knocks, claps and speech', seededNonStrikes(100))];
  if (load) {
    const { nonStrikes } = await load();
    rows.push(rowOf('with voices, rooms and recordings', await nonStrikes(100)));
  }
  return rows;
}

function rowOf(kinds: string, cases: readonly NonStrike[]): Row {
  const taken = takenAsStrikes(cases);
  const names = taken.length > 0 ? ` (${taken.join(', ')})` : '';
  return {
    quantity: `no strikes taken as a strike: ${kinds}`,
    target: '<= 2 %',
    measured: `${((100 * taken.length) / cases.length).toFixed(1)} % of ${cases.length} cases${names}`,
    isMet: taken.length / cases.length <= 0.02,
  };
}
