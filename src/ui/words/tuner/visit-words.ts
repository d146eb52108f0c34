// What is said about a tuner's visit to the whole rack: which pans first, and which pans of a section disagree.

import type { NoteBlend, Section } from '../../../domain/rack/section-blend';
import { displayName } from '../../../domain/tuning/note-names';
import { centsWords, counted, pluralOf } from '../count-words';
import { familyTitle } from '../family-words';
import { rowWords } from '../list-words';
import { signedCents } from '../words';

export const visitWords = {
  title: 'Which pans first',
  why: 'For the day a professional tuner comes: the pans in most need first, with the reason.',
  hours: 'Hours the tuner has',
  hoursOfPan: 'Hours for each pan',
  hoursBad: 'Enter a number of hours above 0, at most 100.',
  print: 'Print or save as PDF',
  made: (day: string) => `made ${day}`,
  inTime: (count: number) =>
    count === 0
      ? 'There is no time for a whole pan.'
      : `There is time for ${pluralOf(count, 'one pan', `${count} pans`)}:`,
  later: 'After that, if there is time',
  fine: 'These can wait',
  nobody: 'No pan needs the tuner.',
  empty: 'No pans are kept here yet. Add a pan and take a round, then come back.',
  addPan: 'Add a pan',
  sections: 'Pans that are played together',
  sectionsWhy:
    'Pans of one section should agree with each other before they agree with anything else.',
  noSections: 'Take a round on two pans of one kind to compare them.',
  first: 'First pan',
  second: 'Second pan',
  compare: 'Compare their notes',
  reading: 'Reading the rounds',
  beat: 'Notes that beat against each other, fastest first',
  noBeats: 'None of their common notes is heard to beat.',
  noRules:
    'The order follows from what was heard, marked and how old it is. No published standard exists.',
} as const;

/** "Lead (tenor): 2 pans, 11 cents apart". */
export const sectionTitle = ({ family, pans, apart }: Section): string =>
  `${familyTitle(family)}: ${counted(pans.length, 'pan')}, ${centsWords(apart)} apart`;

/** "Heron +8, Wren −3", as cents from the band's pitch. */
export const sectionPans = ({ pans }: Section): string =>
  rowWords(pans.map(({ card, panPitch }) => `${card.name} ${signedCents(panPitch)}`));

/** "A4", "12 cents, 3.0 beats a second". */
export const blendLine = ({ note, cents, beatHz }: NoteBlend) => ({
  note: displayName(note),
  apart: `${centsWords(cents)}, ${beatHz.toFixed(1)} beats a second`,
});
