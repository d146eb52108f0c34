// What changed about a note, as a mark on the map.

import type { NoteChange } from '../../../domain/rounds/round-changes';
import type { ThirdKind } from '../../../domain/tuning/third-kind';
import { changedPartials, changeLine, changeWords, signedChange } from '../../words/change-words';
import type { NoteMark } from '../drawing/note-mark';

/** Filled: changed by itself. Outline: no change. Dotted: not heard in both rounds (no `change`). */
export function changeNoteMark(change: NoteChange | undefined, third: ThirdKind | null): NoteMark {
  if (!change) return { text: '', shape: 'dotted', tone: 'plain' };
  const [first] = changedPartials(change, third);
  if (!first) return { text: '', shape: 'outline', tone: 'plain' };
  return {
    text: `${first.sign} ${signedChange(first.cents)}`.trim(),
    shape: 'filled',
    tone: first.cents < 0 ? 'low' : 'high',
  };
}

/** The same for those who do not see it. */
export function changeLabel(
  note: string,
  change: NoteChange | undefined,
  third: ThirdKind | null,
): string {
  if (!change) return `${note}: ${changeWords.notBoth}`;
  const line = changeLine(changedPartials(change, third));
  return `${note}: ${line === '' ? changeWords.noChange : line}`;
}
