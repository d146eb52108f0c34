// How a note stands, with the reason, in a few words.
import type { JudgedStanding } from '../../domain/work/note-standing';
import { signedCents, verdictWords, words } from '../words';
import { panWords } from './pan-words';
import { rackWords } from './rack-words';

/** "good", "flat 9", "octave sharp 12", "buzzing", "walking". */
export function standingWords({ standing, reason }: JudgedStanding): string {
  switch (reason.kind) {
    case 'unread':
    case 'aligned':
      return rackWords.standings[standing];
    case 'octave-open':
      return `${words.octave} ${words.unsure}`;
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

/** The same, short enough for the oval of a note: "−9", "8ve −12", "dead". */
export function standingNumber({ reason }: JudgedStanding): string {
  switch (reason.kind) {
    case 'unread':
      return '';
    case 'aligned':
      return words.true;
    case 'octave-open':
      return '?';
    case 'off':
      return signedCents(reason.fault.cents);
    case 'walking':
      return words.walking;
    case 'mark':
      return panWords.marked[reason.mark];
  }
}
