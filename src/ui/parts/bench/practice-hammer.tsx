// A hammer for a simulated note: each tap on the drawing is a blow that moves it.
import { useState } from 'preact/hooks';
import { isAwaiting, isOpened, newestStep } from '../../../domain/bench/bench-course';
import {
  type BlowFirmness,
  type BlowPlace,
  type BlowSide,
  blowFirmnesses,
  blowSides,
} from '../../../domain/records/blow-places';
import type { LoggedBlows } from '../../../domain/records/rack-records';
import { displayName } from '../../../domain/tuning/note-names';
import type { BenchModel } from '../../../state/bench/bench-model';
import type { OpenBench } from '../../../state/bench/open-bench';
import type { PracticeBenchModel } from '../../../state/bench/practice-bench-model';
import { addressOf } from '../../frame/route';
import { adviceWords } from '../../words/measuring/advice-words';
import { benchWords, loggedWords } from '../../words/measuring/bench-words';
import { blowsWords } from '../../words/measuring/blow-reasons';
import { practiceWords } from '../../words/measuring/practice-words';
import { Two } from './blow-log';
import { BlowSpots } from './blow-spots';

export function PracticeHammer({
  model,
  practice,
  bench,
}: {
  readonly model: Pick<BenchModel, 'advice' | 'hammered'>;
  readonly practice: Pick<PracticeBenchModel, 'hammer'>;
  readonly bench: OpenBench;
}) {
  const [side, setSide] = useState<BlowSide>('above');
  const [firmness, setFirmness] = useState<BlowFirmness>('light');
  const [isElsewhere, setIsElsewhere] = useState(false);
  const { course } = bench;
  if (!isOpened(course)) return <p class="hint">{benchWords.logFirst}</p>;
  const { note } = course;
  const waiting = isAwaiting(course) ? (newestStep(course).blows?.logged ?? null) : null;
  const advice = model.advice.value?.advice;
  const hammer = (logged: LoggedBlows, count: number): void => {
    setIsElsewhere(false);
    practice.hammer(note, { place: logged.place, side: logged.side }, logged.firmness, count);
    model.hammered(count, logged);
  };
  const tap = (place: BlowPlace): void => {
    if (waiting !== null && waiting.place !== place) setIsElsewhere(true);
    else hammer(waiting ?? { place, side, firmness }, 1);
  };
  return (
    <section class="blow-log" aria-label={practiceWords.hammer} data-logged={waiting?.place ?? ''}>
      <h2>{practiceWords.hammer}</h2>
      <p class={isElsewhere && waiting ? 'hint warn' : 'aside'} role="status">
        {waiting === null
          ? practiceWords.hammerHint
          : isElsewhere
            ? practiceWords.onePlace(displayName(note))
            : loggedWords(waiting)}
      </p>
      {advice?.kind === 'blows' && waiting === null && (
        <button
          type="button"
          data-suggested
          onClick={() => {
            const { place, side, firmness, count } = advice;
            hammer({ place, side, firmness }, count);
          }}
        >
          {practiceWords.asSuggested(blowsWords(advice))}
        </button>
      )}
      <BlowSpots chosen={waiting?.place ?? null} onChoose={tap} />
      <Two
        title={benchWords.sidesTitle}
        values={blowSides}
        labels={benchWords.sides}
        chosen={waiting?.side ?? side}
        onChoose={setSide}
        isFixed={waiting !== null}
      />
      <p class="aside">{benchWords.aboveIs}</p>
      <Two
        title={benchWords.firmnessTitle}
        values={blowFirmnesses}
        labels={benchWords.firmnesses}
        chosen={waiting?.firmness ?? firmness}
        onChoose={setFirmness}
        isFixed={waiting !== null}
      />
      <p class="aside">{practiceWords.realPan}</p>
      <a class="caution" href={addressOf('what-moves')}>
        {adviceWords.moves}
      </a>
    </section>
  );
}
