// How a note stands, as a mark on the map: the shapes of `StandingMark`, with the number inside.

import type { JudgedStanding, NoteStanding } from '../../../domain/reading/note-standing';
import type { Judged } from '../../../domain/tuning/verdict';
import { rackWords } from '../../words/rack-words';
import { standingNumber, standingWords } from '../../words/standing-words';
import type { NoteMark } from './note-mark';

/** A standing and, where it is known, what it was judged on. */
export interface ShownStanding extends JudgedStanding {
  readonly judged?: Judged | null;
}

const shapes: Readonly<Record<NoteStanding, NoteMark['shape']>> = {
  good: 'filled',
  playable: 'outline',
  out: 'half',
  avoid: 'crossed',
  unread: 'dotted',
};

/** The mark of a note on the map. */
export const standingNoteMark = (shown: ShownStanding): NoteMark => ({
  text: standingNumber(shown, shown.judged ?? null),
  shape: shapes[shown.standing],
  tone: toneOf(shown),
});

/** What a note of the map is called for those who do not see it: "D4: flat 9, playable". */
export function standingLabel(note: string, shown: JudgedStanding): string {
  const why = standingWords(shown);
  const standing = rackWords.standings[shown.standing];
  return why === standing ? `${note}: ${why}` : `${note}: ${why}, ${standing}`;
}

function toneOf({ standing, reason }: JudgedStanding): NoteMark['tone'] {
  switch (reason.kind) {
    case 'unread':
    case 'octave-open':
    case 'inferred':
      return 'plain';
    case 'aligned':
      return standing === 'good' ? 'true' : 'plain';
    case 'off':
      return reason.fault.cents < 0 ? 'low' : 'high';
    case 'walking':
    case 'mark':
      return 'stop';
  }
}
