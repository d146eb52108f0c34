// What stands under the word and number.
import { type ReadoutPhase, readingOf } from '../../../state/listening/readout-phase';
import { NoteDrawing } from '../drawing/note-drawing';
import { PartialTable } from './partial-table';
import { HowSure, ReadoutHints } from './readout-hints';

/** What must be known beside the verdict, the note drawing, the line per partial, and how sure it all is. */
export function ReadoutDetails({ phase }: { readonly phase: ReadoutPhase }) {
  const reading = readingOf(phase);
  // What is only held has nothing to say or to ask.
  const isShown = phase.kind === 'heard' || phase.kind === 'settled';
  return (
    <>
      {reading && isShown && <ReadoutHints reading={reading} />}
      {phase.kind !== 'idle' && <NoteDrawing reading={reading} />}
      {reading && <PartialTable reading={reading} />}
      {reading && <HowSure reading={reading} />}
    </>
  );
}
