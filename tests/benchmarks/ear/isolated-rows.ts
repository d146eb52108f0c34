// Rows on a single line in white noise.
import { noteName } from '../../../src/domain/tuning/note-names';
import { midiNote } from '../../../src/domain/tuning/units';
import { type IsolatedPoint, isolatedPoints, wholeGrid } from '../../ear-scenes/isolated-line';
import { median, percentOf } from '../../ear-scenes/statistics';
import type { Row } from './print-table';

const mostRms = 1.15;
const mostBias = 0.2;

const nameOf = ({ note, snrDb, seconds }: IsolatedPoint): string =>
  `${noteName(midiNote(note))}, ${snrDb} dB, ${seconds} s`;

export function isolatedRows(): readonly Row[] {
  const points = isolatedPoints(wholeGrid);
  const trials = points[0]?.trials ?? 1;
  const worstBy = (sizeOf: (point: IsolatedPoint) => number): IsolatedPoint =>
    points.reduce((worst, point) => (sizeOf(point) > sizeOf(worst) ? point : worst));
  const byRms = worstBy((point) => point.rms);
  const byBias = worstBy((point) => Math.abs(point.bias));
  const refused = points.reduce((sum, point) => sum + point.refused, 0);
  const within = percentOf(points, (point) => point.rms <= mostRms);
  const perRate = `${trials} trials a point, half at each rate`;
  return [
    {
      quantity: `single line, RMS / bound (${points.length} points)`,
      target: `<= ${mostRms}`,
      measured: [
        `median ${median(points.map((point) => point.rms)).toFixed(3)}`,
        `worst ${byRms.rms.toFixed(2)} (${nameOf(byRms)})`,
        `${within.toFixed(0)} % of points within`,
        `by chance ± ${(1 / Math.sqrt(2 * trials)).toFixed(3)}; ${perRate}; refused ${refused}`,
      ].join('; '),
      isMet: byRms.rms <= mostRms && refused === 0,
    },
    {
      quantity: 'single line, |bias| / bound',
      target: `< ${mostBias}`,
      measured: [
        `median ${median(points.map((point) => Math.abs(point.bias))).toFixed(3)}`,
        `worst ${Math.abs(byBias.bias).toFixed(3)} (${nameOf(byBias)})`,
        `by chance ± ${(1 / Math.sqrt(trials)).toFixed(3)}`,
      ].join('; '),
      isMet: Math.abs(byBias.bias) < mostBias,
    },
    {
      quantity: 'single line, RMS of error / stated error',
      target: '',
      measured: `median ${median(points.map((point) => point.stated)).toFixed(2)}; worst ${Math.max(...points.map((point) => point.stated)).toFixed(2)}`,
      isMet: null,
    },
    ...wholeGrid.windows.map((seconds) => {
      const at = points.filter((point) => point.seconds === seconds);
      const byNote = wholeGrid.notes.map((note) => {
        const values = at.filter((point) => point.note === note).map((point) => point.rms);
        return `${noteName(midiNote(note))} ${Math.max(...values).toFixed(2)}`;
      });
      return {
        quantity: `  worst of 20 to 50 dB, window ${seconds} s`,
        target: '',
        measured: byNote.join(', '),
        isMet: null,
      };
    }),
  ];
}
