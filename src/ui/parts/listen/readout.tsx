// The readout: one word and number; then the note drawing and a line per partial. Held until the next strike.

import { type Reading, strikesToSettle } from '../../../domain/reading/reading';
import { displayName, noteName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { Verdict } from '../../../domain/tuning/verdict';
import { type ReadoutPhase, readingOf } from '../../../state/listening/readout-phase';
import { type VerdictWords, verdictWords, walkingWords, words } from '../../words/words';
import { dampingTest } from './damping-test';
import { FittedLine } from './fitted-line';
import { StateWord, WalkingWord } from './state-word';

const decimals = (value: number | undefined): string =>
  value === undefined ? '' : value.toFixed(2);

const toneOf = (verdict: Verdict): string =>
  verdict.kind === 'aligned' || verdict.kind === 'in-tune'
    ? 'true'
    : verdict.kind === 'octave-open' || verdict.kind === 'inferred'
      ? 'unknown'
      : verdict.kind.endsWith('flat')
        ? 'low'
        : 'high';

/** The word and number. Short: the number stands beside the last word, so that two lines are enough. */
export function Readout({
  phase,
  expected,
  onName,
  verdictOf,
  short = false,
  oneEach = false,
}: {
  readonly phase: ReadoutPhase;
  readonly expected: MidiNote | null;
  /** The user says which note it was. */
  readonly onName: (note: MidiNote) => void;
  /** What is said of a reading that does not walk. */
  readonly verdictOf: (reading: Reading) => Verdict;
  readonly short?: boolean;
  /** One strike a note is all that is asked for. */
  readonly oneEach?: boolean;
}) {
  const reading = readingOf(phase);
  const shown = phase.kind === 'heard' || phase.kind === 'settled' ? phase.reading : null;
  const verdict = shown && !shown.walking ? verdictOf(shown) : null;
  const rival = reading?.octaveRival;
  // Before anything can be heard, the note that waits.
  const named = reading?.note ?? (phase.kind === 'idle' ? expected : null);
  return (
    <section
      id="readout"
      aria-label={words.readout}
      data-state={phase.kind}
      data-note={reading ? noteName(reading.note) : ''}
      data-verdict={verdict?.kind ?? ''}
      data-fundamental-cents={decimals(reading?.fundamental.cents)}
      data-fundamental-rival-cents={decimals(reading?.fundamentalRival?.cents)}
      data-octave-cents={decimals(reading?.octave?.centsFromOwn)}
      data-octave-rival-cents={decimals(rival?.centsFromOwn)}
      data-rival-note={rival && rival.note !== null ? noteName(rival.note) : ''}
      data-inferred={reading ? String(reading.isInferred) : ''}
      data-third-cents={decimals(reading?.third?.centsFromOwn)}
      data-third-kind={reading ? (reading.third?.kind ?? 'none') : ''}
      data-strikes={String(reading?.strikes.length ?? 0)}
    >
      <header class="readout-head">
        <b class="note-name">{named === null ? '' : displayName(named)}</b>
        <span class="readout-progress">{reading ? progressWords(reading, oneEach) : ''}</span>
      </header>
      {/* Only what is settled, and a walking note, are announced; everything else would chatter. */}
      <p class="only-spoken" aria-live="polite">
        {spokenWords(phase, verdictOf)}
      </p>
      <div class="message">
        {verdict ? (
          <VerdictWord verdict={verdict} short={short} />
        ) : shown?.walking ? (
          <WalkingWord centsPerStrike={shown.walking.centsPerStrike} />
        ) : (
          <StateWord phase={phase} expected={expected} onName={onName} />
        )}
      </div>
    </section>
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

/** "double octave / sharp 12" for four lines: a third one would push the rest off the screen. */
function shortened({ lines, number }: VerdictWords): VerdictWords {
  if (number === null || lines.length < 2) return { lines, number };
  return { lines: [lines.slice(0, -1).join(' '), `${lines.at(-1)} ${number}`], number: null };
}

/** What is read out: the settled verdict with what it asks for, or that the note walks. */
function spokenWords(phase: ReadoutPhase, verdictOf: (reading: Reading) => Verdict): string {
  if (phase.kind !== 'heard' && phase.kind !== 'settled') return '';
  const { walking, note } = phase.reading;
  if (walking) {
    const { says, todo } = walkingWords(walking.centsPerStrike);
    return [displayName(note), says, todo].join(' ');
  }
  return phase.kind === 'settled' ? spokenVerdict(phase.reading, verdictOf(phase.reading)) : '';
}

function spokenVerdict(reading: Reading, verdict: Verdict): string {
  const { lines, number } = verdictWords(verdict);
  const spoken = [displayName(reading.note), ...lines];
  if (number !== null) spoken.push(number, words.cents);
  const test = dampingTest(reading);
  if (test) spoken.push(`. ${test.says}`, test.todo);
  return spoken.join(' ');
}

function progressWords(reading: Reading, oneEach: boolean): string {
  const newest = reading.heard.at(-1);
  const hint = newest ? words.loudness[newest.loudness] : '';
  const count = oneEach ? words.strikeCount(reading.strikes.length) : progress(reading);
  return hint === '' ? count : `${count} · ${hint}`;
}

function progress({ strikes: { length }, heard, settled, walking }: Reading): string {
  if (walking) return `${words.strikeCount(length)} · ${words.walking}`;
  if (settled) return `${words.strikeCount(length)} · ${words.settled}`;
  // The last word on the newest strike is still to come: it may settle the reading.
  const isOpen = heard.at(-1)?.provisional === true;
  return length < strikesToSettle || isOpen
    ? words.strikesOf(Math.min(length, strikesToSettle), strikesToSettle)
    : words.oneMore(length);
}
