// The pitch of a pan and its unevenness from round to round.
import type { DriftPoint } from '../../../domain/rounds/pan-drift';
import { dayWords } from '../../words/day-words';
import { courseWords, historyWords } from '../../words/history-words';
import { signedTenths } from '../../words/result-words';
import { tenths } from '../../words/words';
import '../drawing/note-rows.css';
import { TimeChart } from './time-chart';

export function PanDriftCharts({ points }: { readonly points: readonly DriftPoint[] }) {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return null;
  const range = { from: first.at, to: last.at };
  const uneven = points.map((point) => ({ ...point, cents: point.unevenness, sigmaCents: 0 }));
  return (
    <div class="charts">
      <TimeChart
        name={historyWords.panPitch}
        latest={signedTenths(last.cents)}
        spoken={courseWords(points)}
        look="round"
        values={points}
        least={5}
        {...range}
      />
      <TimeChart
        name={historyWords.unevenness}
        latest={tenths(last.unevenness)}
        spoken={courseWords(uneven)}
        look="square"
        values={uneven}
        least={5}
        isOneSided
        {...range}
      />
      <p class="chart-days">
        <span>{dayWords(first.at)}</span>
        {last.at > first.at && <span>{dayWords(last.at)}</span>}
      </p>
      <p class="quiet">{historyWords.panKey}</p>
    </div>
  );
}
