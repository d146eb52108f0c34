// What practising came to: gained, spoiled, and what a patient tuner would have made of the same pan.

import type { NoteOutcome, PracticeOutcome } from '../../../domain/bench/practice-outcome';
import { displayName } from '../../../domain/tuning/note-names';
import type { PracticeBenchView } from '../../../state/bench/practice-bench-model';
import { addressOf } from '../../frame/route';
import { rowWords } from '../../words/list-words';
import { outcomeWords, patientWords, practiceWords } from '../../words/measuring/practice-words';
import { words } from '../../words/words';
import './practice-result.css';

export function PracticeResult({
  view: { outcome, worked, patient },
  onAgain,
}: {
  readonly view: Extract<PracticeBenchView, { readonly kind: 'over' }>;
  readonly onAgain: () => void;
}) {
  return (
    <main
      class="screen"
      data-gained={outcome.gained.length}
      data-spoiled={outcome.spoiled.length}
      data-patient={patient !== null}
    >
      <header class="top">
        <h1>{practiceWords.over}</h1>
        <span>{practiceWords.simulated}</span>
      </header>
      {worked.length === 0 ? (
        <p class="hint">{practiceWords.nothing}</p>
      ) : (
        <>
          <p>
            {rowWords(
              worked.map(
                ({ note, blows }) => `${displayName(note)}: ${practiceWords.blows(blows)}`,
              ),
            )}
            .
          </p>
          <h2>{practiceWords.yours}</h2>
          <Outcome outcome={outcome} />
          <h2>{practiceWords.patient}</h2>
          <p class="hint" role="status">
            {patient === null ? practiceWords.working : practiceWords.patientWhy}
          </p>
          {patient && (
            <>
              <ul class="cautions">
                {patient.work.map((each) => (
                  <li key={each.note}>{patientWords(each)}</li>
                ))}
              </ul>
              <Outcome outcome={patient.outcome} />
            </>
          )}
        </>
      )}
      <footer class="actions">
        <a class="button" href={addressOf('practice')}>
          {words.back}
        </a>
        <button type="button" class="main" onClick={onAgain}>
          {practiceWords.again}
        </button>
      </footer>
    </main>
  );
}

function Outcome({ outcome }: { readonly outcome: PracticeOutcome }) {
  return (
    <>
      <Notes title={practiceWords.gained} notes={outcome.gained} />
      <Notes title={practiceWords.spoiled} notes={outcome.spoiled} />
      {outcome.unchanged.length > 0 && (
        <Notes title={practiceWords.unchanged} notes={outcome.unchanged} />
      )}
    </>
  );
}

const Notes = ({
  title,
  notes,
}: {
  readonly title: string;
  readonly notes: readonly NoteOutcome[];
}) => (
  <section class="outcome">
    <h3>{title}</h3>
    {notes.length === 0 ? (
      <p>{practiceWords.none}</p>
    ) : (
      <ul class="cautions">
        {notes.map((each) => (
          <li key={each.note}>
            <b>{displayName(each.note)}</b> {outcomeWords(each)}
          </li>
        ))}
      </ul>
    )}
  </section>
);
