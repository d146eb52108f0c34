// The rows on computing time.
import type { Scene } from '../../sounds/scene';
import type { Row } from './print-table';
import { sessionTimes, strikeTimes } from './strike-time';

export function timeRows(scenes: readonly Scene[]): readonly Row[] {
  const { once: times, least } = strikeTimes(scenes.slice(0, 110));
  const { first, last } = sessionTimes();
  return [
    {
      quantity: 'time for one strike (1 s of sound)',
      target: '<= 15 ms median',
      measured: `median ${times.processor.toFixed(1)} ms of processor, ${times.clock.toFixed(1)} ms on the clock (95 %: ${times.clock95.toFixed(1)} ms); both verdicts and the watch for onsets`,
      isMet: times.processor <= 15,
    },
    {
      quantity: '  the least of three times for each strike',
      target: '',
      measured: `median ${least.processor.toFixed(1)} ms of processor, ${least.clock.toFixed(1)} ms on the clock (95 %: ${least.clock95.toFixed(1)} ms)`,
      isMet: null,
    },
    {
      quantity: '  in half an hour of listening, first and last 30',
      target: '',
      measured: `median ${first.processor.toFixed(1)} and ${last.processor.toFixed(1)} ms of processor`,
      isMet: null,
    },
  ];
}
