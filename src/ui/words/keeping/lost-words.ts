// What the rack says when the browser has deleted what was kept.

import type { RackTrace } from '../../../domain/rack/rack-trace';
import { counted } from '../count-words';
import { dayWords } from '../day-words';
import { listWords } from '../list-words';

export const lostWords = {
  title: 'The browser has deleted what was kept here.',
  was: ({ pans, readings, at }: RackTrace): string =>
    `On ${dayWords(at)} ${listWords([counted(pans, 'pan'), counted(readings, 'reading')])} were here. Take your last backup in.`,
  takeIn: 'Take a backup in',
  goOn: 'Go on without them',
} as const;
