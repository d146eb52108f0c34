// What a note is good for tonight, as a mark on the map.

import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import { noteReasonShort, noteReasonWords, tonightWords } from '../../words/fall/tonight-words';
import { rowWords } from '../../words/list-words';
import type { NoteMark } from '../drawing/note-mark';

/** Crossed: leave out. Half: only in passing. Filled: play. Outline: fine, but not needed. Dotted: not struck. */
export function tonightNoteMark(note: TonightNote): NoteMark {
  const { action, isNeeded, isUnread, reasons } = note;
  if (isUnread) return { text: '', shape: 'dotted', tone: 'plain' };
  const [first] = reasons;
  const text = first ? noteReasonShort(first) : '';
  switch (action) {
    case 'avoid':
      return { text, shape: 'crossed', tone: isNeeded ? 'stop' : 'plain' };
    case 'in-passing':
      return { text, shape: 'half', tone: isNeeded ? 'high' : 'plain' };
    case 'play':
      return { text, shape: isNeeded ? 'filled' : 'outline', tone: isNeeded ? 'true' : 'plain' };
  }
}

/** What a note of the map is called for those who do not see it: "F4: leave out, 35 cents flat". */
export function tonightLabel(name: string, note: TonightNote | undefined): string {
  if (!note) return name;
  if (note.isUnread) return `${name}: ${tonightWords.notStruck}`;
  const parts = [tonightWords.legend[note.action], ...note.reasons.map(noteReasonWords)];
  if (!note.isNeeded) parts.push(tonightWords.notNeeded);
  return `${name}: ${rowWords(parts)}`;
}
