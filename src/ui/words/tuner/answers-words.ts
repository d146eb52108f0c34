// What the page says that shows what blows have done on a pan.

import type { PartialAnswer, PlaceAnswer } from '../../../domain/advice/pan-answers';
import { usualCount } from '../../../domain/records/blow-places';
import { counted } from '../count-words';
import { rowWords } from '../list-words';
import { signedCents, words } from '../words';

export const answersWords = {
  title: 'What this pan answers',
  none: 'Nothing is known yet. Log on the bench where blows fall, and strike before and after them.',
  why: 'What blows did here, as it was measured: not what they will do.',
  scale: `In cents, for ${usualCount} light blows: the middle one of the sets, and in brackets the lowest and the highest.`,
  fixed:
    'Each partial against a pitch that stays, so an octave that goes along with its fundamental counts as moved.',
  marks:
    'Filled marks and whole lines are struck from above, open marks and broken lines from below.',
  columns: {
    where: 'Where',
    fundamental: words.fundamental,
    octave: words.octave,
    third: words.thirdUnknown,
    sets: 'sets',
    notes: 'notes',
  },
  pan: (name: string, day: string) => rowWords([name, day]),
  print: 'Print it, or save it as PDF',
  save: 'Save or send the page',
  pageName: (pan: string, day: string) => `${pan} what blows did ${day}.html`,
} as const;

/** "+4 (+1 to +7)"; empty where it was not measured. */
export function answerCell(answer: PartialAnswer | null): string {
  if (!answer) return '';
  const { middle, lowest, highest, sets } = answer;
  if (sets === 1) return signedCents(middle);
  return `${signedCents(middle)} (${signedCents(lowest)} to ${signedCents(highest)})`;
}

export const setsCell = ({ sets }: PlaceAnswer): string => counted(sets, 'set');
