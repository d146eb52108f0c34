// What the readout says when it has no verdict, and what to do then.
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { ReadoutPhase } from '../../../state/listening/readout-phase';
import { knockWordsOf } from '../../words/knock-again-words';
import { refusalWords, walkingWords, words, wrongNoteWords } from '../../words/words';

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
    return <Sentences tone="refused" {...wrongNoteWords(displayName(phase.note))} />;
  }
  if (phase.kind === 'refused' && phase.reason === 'knock') {
    const note = expected === null ? null : displayName(expected);
    return <Sentences tone="refused" {...knockWordsOf(note)} />;
  }
  if (phase.kind === 'refused' && phase.candidates.length > 0) {
    return <WhichNote candidates={phase.candidates} onName={onName} />;
  }
  return <p class={`state ${phase.kind}`}>{stateWords(phase, expected)}</p>;
}

/** In place of a verdict: a note that does not hold still has none. */
export const WalkingWord = ({ centsPerStrike }: { readonly centsPerStrike: number }) => (
  <Sentences tone="refused" {...walkingWords(centsPerStrike)} />
);

function Sentences({
  tone,
  says,
  todo,
}: {
  readonly tone: string;
  readonly says: string;
  readonly todo: string;
}) {
  return (
    <p class={`state ${tone}`}>
      {says} <span class="todo">{todo}</span>
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
      <Sentences tone="refused" says={refusalWords['which-note']} todo={words.tapNote} />
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
