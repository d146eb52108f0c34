// What to do next about the note, with reason, risk and what it may disturb; only for those who have confirmed.
import type { Reading } from '../../../domain/reading/reading';
import type { BenchAdvice } from '../../../state/bench/bench-advice';
import type { OpenBench } from '../../../state/bench/open-bench';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { addressOf } from '../../frame/route';
import {
  adviceTitle,
  adviceWords,
  disturbsWords,
  leaveWords,
  professionalWords,
  riskWords,
} from '../../words/measuring/advice-words';
import { benchWords } from '../../words/measuring/bench-words';
import {
  blowsWords,
  expectedWords,
  planWords,
  reasonWords,
} from '../../words/measuring/blow-reasons';

export function AdviceCard({
  shown: { advice, setsHere },
  reading,
}: {
  readonly shown: BenchAdvice;
  readonly reading: Reading | null;
}) {
  return (
    <section
      class={`hint advice ${advice.kind === 'professional' ? 'warn' : ''}`}
      aria-label={adviceWords.title}
      data-advice={advice.kind}
      data-why={advice.kind === 'blows' ? advice.aim : advice.why.kind}
      {...(advice.kind === 'blows'
        ? {
            'data-place': advice.place,
            'data-side': advice.side,
            'data-firmness': advice.firmness,
            'data-count': advice.count,
          }
        : {})}
    >
      <h2>{adviceTitle(advice)}</h2>
      {advice.kind === 'blows' ? (
        <>
          <p class="advice-blows">{blowsWords(advice)}</p>
          <p>{reasonWords(advice, reading, setsHere)}</p>
          {advice.later.length > 0 && (
            <>
              <p>
                <b>{adviceWords.plan}</b>
              </p>
              {planWords(advice, reading).map((step) => (
                <p key={step}>{step}</p>
              ))}
            </>
          )}
          <p>
            <b>{adviceWords.expect}:</b> {expectedWords(advice, reading)}.
          </p>
          <p>
            <b>{adviceWords.risk}:</b> {riskWords(advice)}
          </p>
          {advice.disturbs.length > 0 && (
            <p>
              <b>{adviceWords.disturbs}</b> {disturbsWords(advice)}.
            </p>
          )}
          <p class="quiet">{adviceWords.undo}</p>
          <a class="caution" href={addressOf('what-moves')}>
            {adviceWords.moves}
          </a>
        </>
      ) : (
        <p>{advice.kind === 'leave' ? leaveWords(advice.why) : professionalWords(advice.why)}</p>
      )}
    </section>
  );
}

/** Asked once: without it no suggestion is shown anywhere. */
export function AdviceConsent({
  settings,
  bench,
}: {
  readonly settings: Pick<SettingsModel, 'bench' | 'set'>;
  readonly bench: OpenBench;
}) {
  if (settings.bench.value.isTrained) {
    return bench.around.layout === null ? <p class="aside">{adviceWords.needsPan}</p> : null;
  }
  return (
    <details class="how-sure consent">
      <summary>{adviceWords.consentTitle}</summary>
      <div class="consent-body">
        <p>{adviceWords.consentWhy}</p>
        <ul>
          {benchWords.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <button
          type="button"
          onClick={() => settings.set({ isTrained: true, suggestsBlows: true })}
        >
          {adviceWords.consent}
        </button>
        <p class="aside">{adviceWords.consentOff}</p>
      </div>
    </details>
  );
}
