// What is said about visits of a professional tuner: what they did, and when they come again.
import type { TunerVisit } from '../../../domain/records/rack-records';
import { dayWords } from '../day-words';

export const tunedWords = {
  title: 'The tuner was here',
  why: 'Write down what the tuner said and did. From then on changes are counted from this day.',
  fields: {
    visitedAt: 'Day of the visit',
    who: 'Who it was',
    done: 'What was done',
    remarks: 'What the tuner said',
    nextVisit: 'Next visit',
  },
  nextHint: 'Leave it empty if nothing was agreed.',
  momentBad:
    'Enter a day and a time from 1971 on that is not in the future, with all four digits of the year.',
  dayBad: 'Enter a day after this visit, with all four digits of the year, or leave it empty.',
  isTuned: 'The pan was tuned: count changes from here',
  keep: 'Keep it',
  kept: 'Kept. Take a full round now: it shows the pan as the tuner left it.',
  startRound: 'Start a round',
  stopgaps: (notes: string) =>
    `A magnet is still written down for ${notes}. Say so under “Can we play it tonight?” when it is off.`,
  visits: 'Visits written down',
  none: 'No visit is written down yet.',
  remove: 'Take it out',
  removeOf: (day: string) => `Take the visit of ${day} out`,
  notTuned: 'looked at, not tuned',
} as const;

/** "3 May 2026 · the tuner from the coast · next visit 1 Nov 2026". */
export const visitTitle = ({ visitedAt, who, nextVisit, startsBaseline }: TunerVisit): string =>
  [
    dayWords(visitedAt),
    who,
    startsBaseline ? '' : tunedWords.notTuned,
    nextVisit === null ? '' : `next visit ${dayWords(nextVisit)}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
