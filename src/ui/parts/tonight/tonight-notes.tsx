// Notes that are not simply played, each with what is wrong and what may be tried.

import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import { displayName } from '../../../domain/tuning/note-names';
import type { Cents, MidiNote } from '../../../domain/tuning/units';
import { noteReasonWords, signAdvice, tonightWords } from '../../words/fall/tonight-words';
import { rowWords } from '../../words/list-words';
import { signedCents } from '../../words/words';

export function TonightNotes({
  title,
  notes,
  before,
}: {
  readonly title: string;
  readonly notes: readonly TonightNote[];
  /** How far a note was from the pan before; notes that were not struck then are not in it. */
  readonly before: ReadonlyMap<MidiNote, Cents>;
}) {
  if (notes.length === 0) return null;
  return (
    <section class="field" aria-label={title}>
      <h2>{title}</h2>
      <ul class="tonight-notes">
        {notes.map((note) => (
          <li key={note.note} data-note={note.note} data-action={note.action}>
            <b class="pan-name">{displayName(note.note)}</b>{' '}
            <span>
              {rowWords(note.reasons.map(noteReasonWords))}.{' '}
              {note.reasons.map((reason) =>
                reason.kind === 'off' ? (
                  <Was key="was" before={before.get(note.note)} now={reason.cents} />
                ) : null,
              )}
              {note.reasons.map((reason) =>
                reason.kind === 'sign' && signAdvice[reason.sign] ? (
                  <span key={reason.sign} class="aside">
                    {signAdvice[reason.sign]}{' '}
                  </span>
                ) : null,
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Nothing where the note stands as before. */
const Was = ({ before, now }: { readonly before: Cents | undefined; readonly now: Cents }) =>
  before === undefined || signedCents(before) === signedCents(now) ? null : (
    <span class="aside">{tonightWords.wasBefore(signedCents(before))} </span>
  );
