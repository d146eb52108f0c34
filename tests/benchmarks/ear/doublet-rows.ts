// Rows on two lines at the octave.
import { doubletCounts } from '../../ear-scenes/doublets';
import { seedsFrom } from '../../ear-scenes/seeds';
import type { Row } from './print-table';
import { twoLineCounts } from './two-line-counts';

export function doubletRows(): readonly Row[] {
  const pairs = doubletCounts(seedsFrom(1001, 200), true);
  const singles = doubletCounts(seedsFrom(2001, 200), false);
  const percent = (count: number, { scenes }: { scenes: number }): string =>
    `${((100 * count) / scenes).toFixed(1)} %`;
  const plain = (['fundamental', 'octave', 'third'] as const).flatMap((double) => {
    const counts = twoLineCounts(seedsFrom(20001, 100), double);
    return [
      {
        quantity: `two lines at the ${double}, made apart: reported as two`,
        target: '>= 95 %',
        measured: `${percent(counts.asTwo, counts)} of ${counts.scenes}; ${counts.bothRight} with each line within 1.5 cents; ${counts.refused} not taken as a strike`,
        isMet: counts.bothRight / counts.scenes >= 0.95,
      },
    ];
  });
  const single = twoLineCounts(seedsFrom(30001, 100), null);
  return [
    ...plain,
    {
      quantity: '  any partial taken for two on single lines with exchange',
      target: '<= 1 %',
      measured: `${single.asTwo} of ${3 * single.scenes}; ${single.refused} strikes not taken`,
      isMet: single.asTwo / (3 * single.scenes) <= 0.01,
    },
    {
      quantity: 'doublet at the octave: reported as two',
      target: '>= 98 %',
      measured: `${percent(pairs.asTwo, pairs)} of ${pairs.scenes} scenes; ${pairs.refused} not taken as a strike`,
      isMet: pairs.asTwo / pairs.scenes >= 0.98,
    },
    {
      quantity: '  each line within 1 cent',
      target: 'all of them',
      measured: `${pairs.bothRight} of the ${pairs.asTwo}`,
      isMet: pairs.asTwo > 0 && pairs.bothRight === pairs.asTwo,
    },
    {
      quantity: 'false doublets on single lines with exchange',
      target: '<= 1 %',
      measured: `${percent(singles.asTwo, singles)} of ${singles.scenes} scenes; ${singles.refused} not taken as a strike`,
      isMet: singles.asTwo / singles.scenes <= 0.01,
    },
  ];
}
