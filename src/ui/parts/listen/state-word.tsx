// What the readout says when it has no verdict, and what to do then: as tall as a verdict.
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { ReadoutPhase } from '../../../state/listening/readout-phase';
import { knockWordsOf } from '../../words/knock-again-words';
import { refusalWords, walkingWords, words, wrongNoteWords } from '../../words/words';
import { bigLines } from './big-lines';
import { FittedLine } from './fitted-line';

export function StateWord({
  phase,
  expected,
  onName,
}: {
  readonly phase: ReadoutPhase;
  readonly expected: MidiNote | null;
  readonly onName: (note: MidiNote) => void;
}) {
  if (phase.kind === 'refused' && phase.reason === 'wrong-note' && phase.note !== null) {
    return <Big tone="refused" {...wrongNoteWords(displayName(phase.note))} />;
  }
  if (phase.kind === 'refused' && phase.reason === 'knock') {
    const note = expected === null ? null : displayName(expected);
    return <Big tone="refused" {...knockWordsOf(note)} />;
  }
  if (phase.kind === 'refused' && phase.candidates.length > 0) {
    return <WhichNote candidates={phase.candidates} onName={onName} />;
  }
  const says = stateWords(phase, expected);
  if (phase.kind === 'idle') return <p class="state idle">{says}</p>;
  return <Big tone={phase.kind} says={says} />;
}

/** In place of a verdict: a note that does not hold still has none. */
export const WalkingWord = ({ centsPerStrike }: { readonly centsPerStrike: number }) => (
  <Big tone="refused" {...walkingWords(centsPerStrike)} />
);

function Big({
  tone,
  says,
  todo,
}: {
  readonly tone: string;
  readonly says: string;
  readonly todo?: string;
}) {
  const big = bigLines(says);
  const more = [big.todo, todo].filter(Boolean).join(' ');
  return (
    <p class={`state ${tone}`}>
      <span class="state-lines">
        {big.lines.map((line) => (
          <FittedLine key={line} text={line} size="huge" />
        ))}
      </span>
      {more !== '' && <span class="todo">{more}</span>}
    </p>
  );
}

/** Asked, not guessed: one tap names the note, and the next strike is heard as that one. */
function WhichNote({
  candidates,
  onName,
}: {
  readonly candidates: readonly MidiNote[];
  readonly onName: (note: MidiNote) => void;
}) {
  return (
    <>
      <Big tone="refused" says={refusalWords['which-note']} todo={words.tapNote} />
      <div class="pair candidates">
        {candidates.map((note) => (
          <button key={note} type="button" onClick={() => onName(note)}>
            {displayName(note)}
          </button>
        ))}
      </div>
    </>
  );
}

function stateWords(phase: ReadoutPhase, expected: MidiNote | null): string {
  switch (phase.kind) {
    case 'idle':
      return words.idle;
    case 'listening':
      return expected === null ? words.strikeAny : words.strikeNote(displayName(expected));
    case 'refused':
      return refusalWords[phase.reason];
    case 'heard':
    case 'settled':
      return '';
  }
}
