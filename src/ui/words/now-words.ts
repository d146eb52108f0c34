// When and where a note was measured that is shown as it stands now, and what was done to it since.
import type { NoteNow, PanNow, WorkSince } from '../../domain/rounds/pan-now';
import { momentWords } from './day-words';
import { noteListWords } from './list-words';

/** Where a note on the map was worked on since the round. */
export const workSign = '*';

export const withoutWorkSign = (text: string): string =>
  text.endsWith(workSign) ? text.slice(0, -workSign.length) : text;

export const nowWords = {
  workSign: `${workSign}: worked on since the round.`,
  onBench: (when: string) => `measured on the bench, ${when}`,
  inRound: (when: string) => `measured in the round, ${when}`,
  asOfItsDay:
    'This is what the round found. Notes were worked on or measured since: the page of the pan shows how they stand now.',
  work: {
    none: '',
    measured: 'worked on since the round',
    'not-measured': 'worked on since it was measured',
  } satisfies Record<WorkSince, string>,
  measured: (notes: string) => `Worked on since the round: ${notes}.`,
  notMeasured: (notes: string) =>
    `Worked on since they were measured: ${notes}. Strike them three times on the bench.`,
} as const;

type Known = Pick<NoteNow, 'takenIn' | 'readAt' | 'work'>;

/** "measured on the bench, 3 May 2026, 18:05"; empty for a note without a reading. */
export function takenWords({ takenIn, readAt }: Known): string {
  if (takenIn === null || readAt === null) return '';
  const when = momentWords(readAt);
  return takenIn === 'bench' ? nowWords.onBench(when) : nowWords.inRound(when);
}

/** What a row says of a note that the round alone does not tell; empty for a note that stands as in the round. */
export const sinceRoundWords = (note: Known): readonly string[] =>
  [note.takenIn === 'bench' ? takenWords(note) : '', nowWords.work[note.work]].filter(
    (each) => each !== '',
  );

/** The sentences about the notes that were worked on; none where there are none. */
export function workWords({ notes }: Pick<PanNow, 'notes'>): readonly string[] {
  const those = (work: WorkSince): string =>
    noteListWords(notes.filter((each) => each.work === work).map(({ note }) => note));
  const measured = those('measured');
  const open = those('not-measured');
  return [
    ...(open === '' ? [] : [nowWords.notMeasured(open)]),
    ...(measured === '' ? [] : [nowWords.measured(measured)]),
  ];
}
