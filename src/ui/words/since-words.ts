// From when on changes are counted: from a tuner's visit, or from another round; and the table of what happened.
import { dayWords } from './day-words';

export const sinceWords = {
  legend: 'Count from',
  from: { visit: 'The tuner’s visit', all: 'The first round' },
  /** The round that shows how the tuner left the pan. */
  visit: (visitedAt: number): string => `The tuner’s visit, ${dayWords(visitedAt)}`,
  isFirst: 'This round shows the pan as the tuner left it. Later rounds can be compared with it.',
  oneSince: 'One round since the tuner’s visit. After the next one this shows how the pan moves.',
  events: 'What happened as a table (CSV)',
  eventsName: (pan: string): string => `${pan} what happened.csv`,
} as const;
