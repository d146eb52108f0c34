// What the page says that shows which blows move what, and what field tuners do about which fault.

import type { TradeCase } from '../../../domain/advice/trade-cases';
import { mustWords, placesWords } from './blow-reasons';

export const whatMovesWords = {
  title: 'What moves what',
  why: 'Blows at one place move some partials and leave others. How much differs from pan to pan.',
  faults: 'What is wrong, and where it is worked',
  rule: 'A partial that is good is never moved on purpose to suit another one.',
  marks:
    'Filled marks and whole lines are struck from above, open marks and broken lines from below. Above is the side that is played.',
  found: 'Which way is found by one or two light blows and a strike.',
  leave: 'When to leave it',
  leaves: [
    'A note within your limits. One or two cents is good enough.',
    'A top note within two cents.',
    'A note you are not sure of, or one that does not hold still.',
    'A note that is more than your limit off, or cracked: a professional.',
    'If no place helps, leave the note or give it to a professional.',
  ],
  kronman: 'Source: U. Kronman, Steel Pan Tuning, 1992, chapter 24.',
  practice: 'Common practice, no published source.',
  sizes: 'Nobody has published how much blows move. The app learns it from the blows you log.',
} as const;

/** "The octave alone must rise". */
export function tradeFaultWords(each: TradeCase): string {
  const must = mustWords(each, null);
  return must.charAt(0).toUpperCase() + must.slice(1);
}

export const tradePlacesWords = (each: TradeCase): string => {
  const places = placesWords(each);
  return `${places.charAt(0).toUpperCase()}${places.slice(1)}.`;
};

export const sourceWords = ({ source }: Pick<TradeCase, 'source'>): string =>
  source === 'common practice, no source' ? whatMovesWords.practice : whatMovesWords.kronman;
