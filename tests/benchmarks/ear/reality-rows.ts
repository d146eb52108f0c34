// Rows that set our simulated strikes against real ones, figure by figure.

import { percentOf, quantile } from '../../ear-scenes/statistics';
import type { StrikeFigures } from '../../strike-statistics/strike-figures';
import { missingTakes } from '../strikes/real-takes';
import type { Row } from './print-table';
import { type FiguresOf, realFigures, simulatedFigures } from './reality';

type Numeric = Exclude<keyof StrikeFigures, 'hasSecondLine'>;

const figureNames: readonly {
  readonly key: Numeric;
  readonly name: string;
  readonly digits: number;
}[] = [
  { key: 'ownShare', name: 'own share of the energy of the first 28 ms', digits: 2 },
  { key: 'octaveEarlyOverLateDb', name: 'octave, first 28 ms against 0.1 to 0.3 s, dB', digits: 0 },
  { key: 'octaveRiseMs', name: 'octave’s rise to 3 dB under its loudest, ms', digits: 1 },
  { key: 'octaveOverFundamentalDb', name: 'octave over fundamental, 0.1 to 0.5 s, dB', digits: 0 },
  { key: 'ringRoot', name: 'time constant of the fundamental × √f, √s', digits: 1 },
  { key: 'pitchAt50Ms', name: 'pitch at 0.05 s against 0.3 to 0.55 s, cents', digits: 0 },
  { key: 'pitchAt150Ms', name: 'pitch at 0.15 s against 0.3 to 0.55 s, cents', digits: 0 },
  { key: 'exactHarmonics', name: 'exact harmonics 5 to 16 that can be heard', digits: 0 },
  {
    key: 'secondLineHz',
    name: 'where there are two lines at the fundamental, Hz apart',
    digits: 1,
  },
];

export function realityRows(): readonly Row[] {
  const real = realFigures();
  const all = [...simulatedFigures(), ...(real ? [real] : [])];
  const plain = (quantity: string, measured: string): Row => ({
    quantity,
    target: '',
    measured,
    isMet: null,
  });
  const valuesOf = ({ figures }: FiguresOf, key: Numeric): readonly number[] =>
    figures.flatMap((each) => each[key] ?? []);
  return [
    plain(
      'simulated strikes beside real ones: 5 % / median / 95 %',
      all.map(({ name, figures }) => `${figures.length} ${name}`).join(', '),
    ),
    ...(real ? [] : [plain('  no real ones', missingTakes())]),
    ...figureNames.flatMap(({ key, name, digits }) => [
      plain(`  ${name}`, ''),
      ...all.map((each) => {
        const values = valuesOf(each, key);
        const three = [0.05, 0.5, 0.95].map((share) => quantile(values, share).toFixed(digits));
        const measured = values.length === 0 ? 'none' : three.join(' / ');
        return plain(`    ${each.name}`, measured + distance(values, each, real, key));
      }),
    ]),
    plain('  a second line at the fundamental, within 12 dB and 10 Hz', ''),
    ...all.map((each) =>
      plain(
        `    ${each.name}`,
        `${percentOf(each.figures, ({ hasSecondLine }) => hasSecondLine).toFixed(0)} % of strikes`,
      ),
    ),
  ];

  function distance(
    values: readonly number[],
    each: FiguresOf,
    against: FiguresOf | null,
    key: Numeric,
  ): string {
    if (!against || each === against || values.length === 0) return '';
    return `; largest distance to the real distribution ${farthest(values, valuesOf(against, key)).toFixed(2)}`;
  }
}

/** Largest distance between the two distribution functions, 0…1 (Kolmogorov and Smirnov’s statistic). */
function farthest(some: readonly number[], others: readonly number[]): number {
  const below = (values: readonly number[], limit: number): number =>
    values.filter((value) => value <= limit).length / values.length;
  return Math.max(
    ...[...some, ...others].map((limit) => Math.abs(below(some, limit) - below(others, limit))),
  );
}
