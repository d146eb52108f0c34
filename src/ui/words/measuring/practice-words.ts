// What practising with a hammer says.

import type { NoteOutcome } from '../../../domain/bench/practice-outcome';
import type { PatientOutcome, PracticeLevel } from '../../../domain/ports/practice-port';
import { displayName } from '../../../domain/tuning/note-names';
import { pluralOf } from '../count-words';
import { rowWords } from '../list-words';
import { standingWords } from '../standing-words';
import { madeWorseWords } from './bench-words';

export const practiceWords = {
  title: 'Practise with a hammer',
  link: 'Practise with a hammer',
  why: 'A simulated pan: strike its notes, hammer them, and see what moves what. Nothing can be spoiled for good, and nothing is kept.',
  level: 'Choose a pan',
  levels: {
    'one-flat': 'One flat note on a good pan',
    'some-out': 'Some notes out of tune',
    dropped: 'A pan that was dropped',
  } satisfies Record<PracticeLevel, string>,
  loading: 'Making the pan.',
  simulated: 'simulated',
  find: 'Tap notes to strike them. Find one that is out, then put it on the bench.',
  putOnBench: (note: string) => `Work on ${note}`,
  backToPan: 'Back to the pan',
  finish: 'Finish and compare',
  hammer: 'Hammer',
  hammerHint: 'Each tap is one blow, and it really moves the simulated note.',
  onePlace: (note: string) =>
    `A set of blows falls at one place. Strike ${note} to see what it did.`,
  asSuggested: (blows: string) => `Hammer as suggested: ${blows}`,
  realPan:
    'On a real pan a wrong blow may be beyond repair, and a professional can undo less than you think.',
  over: 'What your hammering did',
  yours: 'Your work',
  nothing: 'Nothing was hammered. The pan is as it was.',
  gained: 'Gained',
  spoiled: 'Spoiled',
  unchanged: 'As before',
  none: 'none',
  notWorked: 'not worked on: it moved along with a neighbour',
  blows: (count: number) => pluralOf(count, 'one blow', `${count} blows`),
  patient: 'What a patient tuner would have done',
  patientWhy: 'The same pan, the same notes, following the suggestions alone.',
  working: 'Working it out.',
  again: 'Practise again',
} as const;

/** "flat 9 → good", "good → good, octave −1 → −7". */
export const outcomeWords = ({ before, after, wasWorked, madeWorse }: NoteOutcome): string =>
  rowWords([
    `${standingWords(before)} → ${standingWords(after)}`,
    ...madeWorse.map(madeWorseWords),
    ...(wasWorked ? [] : [practiceWords.notWorked]),
  ]);

/** "F♯4: 3 sets of blows, then left it". */
export const patientWords = ({ note, sets, end }: PatientOutcome['work'][number]): string => {
  const work = sets === 0 ? 'no blows' : `${pluralOf(sets, 'one set', `${sets} sets`)} of blows`;
  return `${displayName(note)}: ${work}, ${endWords[end]}.`;
};

const endWords = {
  leave: 'then left it',
  professional: 'then left it to a professional',
  'sets-used-up': 'and was not done yet',
} as const;
