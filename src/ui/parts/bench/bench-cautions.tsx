// What must be known before a hammer is lifted, at the foot of the bench; one line in sight leads here.

import { addressOf } from '../../frame/route';
import { cautionsWords } from '../../words/fall/cautions-words';
import { adviceWords } from '../../words/measuring/advice-words';
import { benchWords } from '../../words/measuring/bench-words';

const place = 'bench-cautions';

/** Without leaving the bench, which would turn the microphone off. */
export function showCautions(): void {
  const list = document.getElementById(place);
  list?.scrollIntoView({ block: 'start' });
  list?.focus({ preventScroll: true });
}

export function BenchCautions() {
  return (
    <section id={place} class="hint warn bench-cautions" tabIndex={-1}>
      <h2>{benchWords.cautionsTitle}</h2>
      <ul class="cautions">
        {benchWords.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <a class="caution" href={addressOf('cautions')}>
        {cautionsWords.more}
      </a>
      <a class="caution" href={addressOf('what-moves')}>
        {adviceWords.moves}
      </a>
    </section>
  );
}
