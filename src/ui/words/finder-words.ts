// What finds a pan among many says, and what is said about several pans at once.
import type { RackOrder } from '../../domain/rack/rack-order';
import { counted } from './count-words';

export const finderWords = {
  search: 'Find a pan',
  sortBy: 'Order',
  orders: { need: 'most in need', name: 'by name', 'last-round': 'oldest round' } satisfies Record<
    RackOrder,
    string
  >,
  section: 'Section',
  allSections: 'all',
  several: 'Several at once',
} as const;

export const severalWords = {
  title: 'Several pans at once',
  choose: 'Choose the pans.',
  empty: 'No pans are kept here yet. Add one, then come back.',
  all: 'All of these',
  none: 'None',
  chosen: (count: number) => (count === 0 ? 'no pan chosen' : `${counted(count, 'pan')} chosen`),
  make: (count: number) => `Make a file of ${counted(count, 'pan')}`,
  print: (count: number) => `Print ${counted(count, 'sheet')}`,
  sheets: 'The sheets',
  reading: (done: number, all: number) => `Reading ${done} of ${counted(all, 'pan')}`,
  owner: 'New owner',
  ownerHint: 'A name, a school, a band. Empty: nobody.',
  move: (count: number) => `Give ${counted(count, 'pan')} this owner`,
  moved: (count: number, owner: string) =>
    `${counted(count, 'pan')} ${owner === '' ? 'without an owner' : `of ${owner}`} now.`,
} as const;
