// The readout: one word and number; then the note drawing and a line per partial. Held until the next strike.
import { displayName, noteName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';
import { type Verdict, verdictOn } from '../../domain/tuning/verdict';
import { type Reading, strikesToSettle } from '../../domain/work/reading';
import { type ReadoutPhase, readingOf } from '../../state/readout-phase';
import { refusalWords, type VerdictWords, verdictWords, words, wrongNoteWords } from '../words';
import { FittedLine } from './fitted-line';
import { NoteDrawing } from './note-drawing';
import { PartialLines } from './partial-lines';

const decimals = (value: number | undefined): string =>
  value === undefined ? '' : value.toFixed(2);

const toneOf = (verdict: Verdict): string =>
  verdict.kind === 'aligned' ? 'true' : verdict.kind.endsWith('flat') ? 'low' : 'high';

/** The word and number. Short: the number stands beside the last word, so that two lines are enough. */
export function Readout({
  phase,
  expected,
  short = false,
}: {
  readonly phase: ReadoutPhase;
  readonly expected: MidiNote | null;
  readonly short?: boolean;
}) {
  const reading = readingOf(phase);
  const verdict =
    reading && (phase.kind === 'heard' || phase.kind === 'settled') ? verdictOn(reading) : null;
  return (
    <section
      id="readout"
      aria-label={words.readout}
      data-state={phase.kind}
      data-note={reading ? noteName(reading.note) : ''}
      data-verdict={verdict?.kind ?? ''}
      data-fundamental-cents={decimals(reading?.fundamental.cents)}
      data-octave-cents={decimals(reading?.octave?.centsFromOwn)}
      data-third-cents={decimals(reading?.third?.centsFromOwn)}
      data-third-kind={reading ? (reading.third?.kind ?? 'none') : ''}
      data-strikes={String(reading?.strikes.length ?? 0)}
    >
      <header class="readout-head">
        <b class="note-name">{reading ? displayName(reading.note) : ''}</b>
        <span>{reading ? progressWords(reading) : ''}</span>
      </header>
      {/* Only settled results are announced; everything else would chatter. */}
      <p class="only-spoken" aria-live="polite">
        {phase.kind === 'settled' ? spokenVerdict(phase.reading) : ''}
      </p>
      <div class="message">
        {verdict ? (
          <VerdictWord verdict={verdict} short={short} />
        ) : (
          <StateWord phase={phase} expected={expected} />
        )}
      </div>
    </section>
  );
}

/** The note drawing and the line per partial. */
export function ReadoutDetails({ phase }: { readonly phase: ReadoutPhase }) {
  const reading = readingOf(phase);
  return (
    <>
      {phase.kind !== 'idle' && <NoteDrawing reading={reading} />}
      {reading && <PartialLines reading={reading} />}
    </>
  );
}

function VerdictWord({ verdict, short }: { readonly verdict: Verdict; readonly short: boolean }) {
  const { lines, number } = short ? shortened(verdictWords(verdict)) : verdictWords(verdict);
  return (
    <p class={`verdict ${toneOf(verdict)}`}>
      {lines.map((line) => (
        <FittedLine key={line} text={line} size="huge" />
      ))}
      {number !== null && (
        <span class="number">
          <FittedLine text={number} size="digits" /> <small>{words.cents}</small>
        </span>
      )}
    </p>
  );
}

/** "octave / sharp 12" for "octave / sharp / 12 cents": a third line would push the pan off the screen. */
function shortened({ lines, number }: VerdictWords): VerdictWords {
  if (number === null || lines.length < 2) return { lines, number };
  return { lines: [...lines.slice(0, -1), `${lines.at(-1)} ${number}`], number: null };
}

function StateWord({
  phase,
  expected,
}: {
  readonly phase: ReadoutPhase;
  readonly expected: MidiNote | null;
}) {
  if (phase.kind === 'refused' && phase.reason === 'wrong-note' && phase.note !== null) {
    const { says, todo } = wrongNoteWords(displayName(phase.note));
    return (
      <p class="state refused">
        {says} <span class="todo">{todo}</span>
      </p>
    );
  }
  return <p class={`state ${phase.kind}`}>{stateWords(phase, expected)}</p>;
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

function spokenVerdict(reading: Reading): string {
  const { lines, number } = verdictWords(verdictOn(reading));
  const spoken = [displayName(reading.note), ...lines];
  return (number === null ? spoken : [...spoken, number, words.cents]).join(' ');
}

const progressWords = (reading: Reading): string =>
  reading.settled
    ? `${words.strikeCount(reading.strikes.length)} · ${words.settled}`
    : words.strikesOf(reading.strikes.length, strikesToSettle);
