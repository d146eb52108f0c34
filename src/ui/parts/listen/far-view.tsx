// The readout alone, as big as the screen allows, to be read from two or three metres.
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Reading } from '../../../domain/reading/reading';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { Verdict } from '../../../domain/tuning/verdict';
import { type ReadoutPhase, readingOf } from '../../../state/listening/readout-phase';
import { farLines, handsWords } from '../../words/measuring/hands-words';
import { refusalWords, walkingWords, words } from '../../words/words';
import './far-view.css';

/** Takes the place of a screen; the whole of it is one button. */
export function FarView({
  phase,
  expected,
  verdictOf,
  onLeave,
}: {
  readonly phase: ReadoutPhase;
  readonly expected: MidiNote | null;
  readonly verdictOf: (reading: Reading) => Verdict;
  readonly onLeave: () => void;
}) {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => button.current?.focus(), []);
  const reading = readingOf(phase);
  const shown = phase.kind === 'heard' || phase.kind === 'settled' ? phase.reading : null;
  const note = reading?.note ?? expected;
  const verdict = shown && !shown.walking ? verdictOf(shown) : null;
  const lines = verdict ? farLines(verdict) : stateLines(phase, shown, expected);
  return (
    <main
      class="far"
      data-state={phase.kind}
      data-verdict={verdict?.kind ?? ''}
      data-strikes={String(reading?.strikes.length ?? 0)}
    >
      <button ref={button} type="button" class="far-all" onClick={onLeave}>
        <span class="far-head">
          <b>{note === null ? '' : displayName(note)}</b>
          <span>{reading ? words.strikeCount(reading.strikes.length) : ''}</span>
        </span>
        <span class="far-lines">
          {lines.map((line) => (
            <FarLine key={line} text={line} />
          ))}
        </span>
        <span class="far-leave">{handsWords.leaveFar}</span>
      </button>
    </main>
  );
}

function stateLines(
  phase: ReadoutPhase,
  shown: Reading | null,
  expected: MidiNote | null,
): readonly string[] {
  if (shown?.walking) return [walkingWords(shown.walking.centsPerStrike).says];
  switch (phase.kind) {
    case 'refused':
      return [refusalWords[phase.reason]];
    case 'idle':
      return [words.idle];
    default:
      return [expected === null ? words.strikeAny : words.strikeNote(displayName(expected))];
  }
}

/** Size of the letters to the height of their line: the capitals, 0.7 em, nearly fill it. */
const lettersToLine = 1.2;
/** Letters may become this narrow before they become smaller. */
const narrowest = 0.72;

/** One line that fills its share of the height, narrowed and then made smaller until it fits the width. */
function FarLine({ text }: { readonly text: string }) {
  const frame = useRef<HTMLSpanElement>(null);
  const line = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const box = frame.current;
    const letters = line.current;
    if (!box || !letters) return;
    const fill = (): void => {
      letters.style.transform = '';
      const size = lettersToLine * box.clientHeight;
      letters.style.fontSize = `${size}px`;
      const room = box.clientWidth / Math.max(1, letters.offsetWidth);
      const smaller = Math.min(1, room / narrowest);
      letters.style.fontSize = `${size * smaller}px`;
      letters.style.transform = `scaleX(${Math.min(1, room / smaller)})`;
    };
    fill();
    const observer = new ResizeObserver(fill);
    observer.observe(box);
    void document.fonts?.ready.then(fill);
    return () => observer.disconnect();
  }, [text]);
  return (
    <span ref={frame} class="far-line">
      <span ref={line}>{text}</span>
    </span>
  );
}
