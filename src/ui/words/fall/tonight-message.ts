// What the band leader is sent about a pan: the same lines as text and in the picture.
import type { TonightResult } from '../../../domain/knock-check/judge-tonight';
import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import { displayName } from '../../../domain/tuning/note-names';
import type { Instant } from '../../../domain/tuning/units';
import { momentWords } from '../day-words';
import { listWords, rowWords } from '../list-words';
import { lookWords } from './knock-words';
import {
  firstSentence,
  noteReasonWords,
  reasonSentence,
  tonightWords,
  verdictSentence,
} from './tonight-words';

export interface TonightMessage {
  readonly pan: string;
  readonly when: string;
  /** The answer: "Play it without D4 and A4." */
  readonly sentence: string;
  /** Why, what to do first, and what is wrong with which note. */
  readonly lines: readonly string[];
}

export function tonightMessage({
  name,
  now,
  verdict,
  reasons,
  first,
  tell,
  unsure,
  notes,
}: Pick<TonightResult, 'verdict' | 'reasons' | 'first' | 'tell' | 'unsure' | 'notes'> & {
  readonly name: string;
  readonly now: Instant;
}): TonightMessage {
  const short = notes.filter((note) => note.isNeeded && note.action === 'in-passing');
  return {
    pan: name,
    when: momentWords(now),
    sentence: verdictSentence(verdict, now),
    lines: [
      ...reasons.map(reasonSentence),
      ...notes.filter((note) => note.isNeeded && note.action === 'avoid').map(wrongWith),
      ...(short.length === 0
        ? []
        : [`${tonightWords.inPassing}: ${short.map(wrongWith).join(' ')}`]),
      ...first.map(firstSentence),
      ...(tell.length === 0 ? [] : [`${tonightWords.keepInMind}: ${shortNames(tell)}.`]),
      ...(unsure.length === 0 ? [] : [tonightWords.unsure(shortNames(unsure))]),
    ],
  };
}

const shortNames = (looks: TonightResult['tell']): string =>
  listWords(looks.map((look) => lookWords[look].short));

const wrongWith = ({ note, reasons }: TonightNote): string =>
  `${displayName(note)}: ${rowWords(reasons.map(noteReasonWords))}.`;

export const messageText = ({ pan, when, sentence, lines }: TonightMessage): string =>
  [`${pan}, ${when}`, sentence, ...lines].join('\n');
