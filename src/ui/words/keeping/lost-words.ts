// What the rack says when the browser has deleted what was kept.
import type { RackTrace } from '../../../domain/rack/rack-trace';
import { dayWords } from '../day-words';

const counted = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

export const lostWords = {
  title: 'The browser has deleted what was kept here.',
  was: ({ pans, readings, at }: RackTrace): string =>
    `On ${dayWords(at)} ${counted(pans, 'pan', 'pans')} and ${counted(readings, 'reading', 'readings')} were here. Take your last backup in.`,
  takeIn: 'Take a backup in',
  goOn: 'Go on without them',
} as const;
