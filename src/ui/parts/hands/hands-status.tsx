// One line of what is going on: blows heard so far, the microphone, or what the next strike needs.

import { isAwaiting, newestReading, newestStep } from '../../../domain/bench/bench-course';
import type { BenchModel } from '../../../state/bench/bench-model';
import { courseOf, type OpenBench } from '../../../state/bench/open-bench';
import type { ListenModel } from '../../../state/listening/listen-model';
import { blowsSoFar, handsWords } from '../../words/measuring/hands-words';
import { microphoneWords } from '../../words/words';
import { dampingTest } from '../listen/damping-test';

export function HandsStatus(props: {
  readonly model: Pick<BenchModel, 'isHearing' | 'cameOn' | 'advice'>;
  readonly listen: Pick<ListenModel, 'microphone'>;
  readonly bench: OpenBench;
}) {
  const { says, isTrouble } = statusOf(props);
  return (
    <p class={`hands-status ${isTrouble ? 'trouble' : ''}`} role="status">
      {says}
    </p>
  );
}

function statusOf({ model, listen, bench }: Parameters<typeof HandsStatus>[0]): {
  readonly says: string;
  readonly isTrouble: boolean;
} {
  const { course, check } = bench;
  const { blows } = newestStep(course);
  const advice = model.advice.value?.advice;
  const well = (says: string) => ({ says, isTrouble: false });
  if (!check && blows && isAwaiting(course)) {
    return well(blowsSoFar(blows, advice?.kind === 'blows' ? advice.count : null));
  }
  if (!model.isHearing.value) {
    const { value } = listen.microphone;
    const isTrouble = value.kind !== 'idle';
    return { says: microphoneWords(value).sentence, isTrouble };
  }
  if (model.cameOn.value) return well(handsWords.cameOn);
  const reading = newestReading(courseOf(bench));
  const test = reading && dampingTest(reading);
  return well(test?.todo ?? '');
}
