// How a note stands, with the reason, in a few words.

import type { Fault, JudgedStanding } from '../../domain/reading/note-standing';
import type { Judged } from '../../domain/tuning/verdict';
import { panWords } from './pan-words';
import { rackWords } from './rack-words';
import { signedCents, verdictWords, words } from './words';

/** "good", "flat 9", "octave sharp 12", "buzzing", "walking". */
export function standingWords({ standing, reason }: JudgedStanding): string {
  switch (reason.kind) {
    case 'unread':
    case 'aligned':
      return rackWords.standings[standing];
    case 'octave-open':
      return `${words.octave} ${words.unsure}`;
    case 'inferred':
      return `${words.fundamental} ${words.inferred}`;
    case 'off': {
      const { lines, number } = verdictWords(reason.fault);
      return [...lines, number ?? ''].join(' ').trim();
    }
    case 'walking':
      return words.walking;
    case 'mark':
      return panWords.marked[reason.mark];
  }
}

/** The same without the number, where it stands beside the words: "flat", "octave sharp", "buzzing". */
export function standingTitle(shown: JudgedStanding): string {
  return shown.reason.kind === 'off'
    ? verdictWords(shown.reason.fault).lines.join(' ')
    : standingWords(shown);
}

/** Signs before a number that is about another partial than the fundamental. */
export const partialSigns = {
  octave: '8ve',
  twelfth: '12th',
  'double-octave': '15th',
} as const;

/**
 * The same, short enough for the oval of a note: "−9", "8ve −12", "dead". A note with nothing to say against it
 * shows its fundamental in `judged`.
 */
export function standingNumber(
  { standing, reason }: JudgedStanding,
  judged: Pick<Judged, 'fundamental'> | null = null,
): string {
  switch (reason.kind) {
    case 'unread':
      return '';
    case 'aligned':
      return judged ? signedCents(judged.fundamental.cents) : rackWords.standings[standing];
    case 'octave-open':
      return `${partialSigns.octave} ?`;
    case 'inferred':
      return judged ? `${signedCents(judged.fundamental.cents)} ?` : '?';
    case 'off': {
      const { fault } = reason;
      const sign = signOf(fault);
      return [sign, signedCents(fault.cents)].join(' ').trim();
    }
    case 'walking':
      return words.walking;
    case 'mark':
      return panWords.marked[reason.mark];
  }
}

function signOf(fault: Fault): string {
  switch (fault.kind) {
    case 'flat':
    case 'sharp':
      return '';
    case 'octave-flat':
    case 'octave-sharp':
      return partialSigns.octave;
    case 'third-flat':
    case 'third-sharp':
      return partialSigns[fault.third];
  }
}
