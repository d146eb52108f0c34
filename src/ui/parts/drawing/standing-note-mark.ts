// How a note stands, as a mark on the map: the shapes of `StandingMark`, with the number inside.

import type { JudgedStanding, NoteStanding } from '../../../domain/reading/note-standing';
import type { WorkSince } from '../../../domain/rounds/pan-now';
import type { Judged } from '../../../domain/tuning/verdict';
import { nowWords, workSign } from '../../words/now-words';
import { rackWords } from '../../words/rack-words';
import { standingNumber, standingWords } from '../../words/standing-words';
import type { NoteMark } from './note-mark';

/** A standing and, where it is known, what it was judged on. */
export interface ShownStanding extends JudgedStanding {
  readonly judged?: Judged | null;
  /** Where it stands now, not as a round found it: what was done to it since. */
  readonly work?: WorkSince;
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
  text: `${standingNumber(shown, shown.judged ?? null)}${(shown.work ?? 'none') === 'none' ? '' : workSign}`,
  shape: shapes[shown.standing],
  tone: toneOf(shown),
});

/** What a note of the map is called for those who do not see it: "D4: flat 9, playable". */
export function standingLabel(note: string, shown: ShownStanding): string {
  const why = standingWords(shown);
  const standing = rackWords.standings[shown.standing];
  const says = [why, why === standing ? '' : standing, nowWords.work[shown.work ?? 'none']];
  return `${note}: ${says.filter((each) => each !== '').join(', ')}`;
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
