// The fourteen faults on which field tuners agree, each with the answer of the trade (common practice, no source).

import type { FaultName } from '../../../src/domain/advice/trade-cases';
import type { BlowWhere } from '../../../src/domain/records/blow-places';
import { between } from '../../../src/practice-pan/seeded-random';
import type { Plant } from './tune-by-advice';

/** `leave` and `professional` are no places: no blows at all. */
export type Answer = readonly BlowWhere[] | 'leave' | 'professional';

export interface KnownFault {
  readonly name: string;
  readonly isTopNote?: boolean;
  /** One such note, each partial against its fixed target, cents. */
  readonly sample: Plant;
  /** Others like it. */
  draw(random: () => number): Plant;
  readonly fault: FaultName | null;
  readonly answer: Answer;
}

const above = (place: BlowWhere['place']): BlowWhere => ({ place, side: 'above' });
const below = (place: BlowWhere['place']): BlowWhere => ({ place, side: 'below' });
const longAxis = [above('glancing-long'), below('glancing-long')];
const shortAxis = [above('glancing-short'), below('glancing-short')];
const raised = [above('corners'), below('middle')];

/** Off by so much, cents; the third has a wider limit. Our own choice: what field work is asked to mend. */
const off = (random: () => number) => between(random, 8, 20);
const thirdOff = (random: () => number) => between(random, 14, 28);
/** True: a little beside, as any note is. */
const fair = (random: () => number) => between(random, -2, 2);

export const fourteenFaults: readonly KnownFault[] = [
  {
    name: 'all three flat',
    sample: [-12, -12, -12],
    draw: (random) => {
      const by = off(random);
      return [-by, -by + fair(random), -by + fair(random)];
    },
    fault: 'all-flat',
    answer: [above('border')],
  },
  {
    name: 'all three sharp',
    sample: [12, 12, 12],
    draw: (random) => {
      const by = off(random);
      return [by, by + fair(random), by + fair(random)];
    },
    fault: 'all-sharp',
    answer: [below('border'), above('middle')],
  },
  {
    name: 'fundamental and octave flat',
    sample: [-12, -12, 0],
    draw: (random) => {
      const by = off(random);
      return [-by, -by + fair(random), fair(random)];
    },
    fault: 'fundamental-and-octave-flat',
    answer: [above('long-ends')],
  },
  {
    name: 'fundamental alone flat',
    sample: [-12, 0, 0],
    draw: (random) => [-off(random), fair(random), fair(random)],
    fault: 'fundamental-flat',
    answer: raised,
  },
  {
    name: 'fundamental flat, octave true, third between',
    sample: [-12, 0, -6],
    draw: (random) => {
      const by = off(random);
      return [-by, fair(random), -by / 3];
    },
    fault: 'fundamental-flat',
    answer: raised,
  },
  {
    name: 'fundamental alone sharp',
    sample: [12, 0, 0],
    draw: (random) => [off(random), fair(random), fair(random)],
    fault: 'fundamental-sharp',
    answer: [above('middle')],
  },
  {
    name: 'octave alone flat',
    sample: [0, -12, 0],
    draw: (random) => [fair(random), -off(random), fair(random)],
    fault: 'octave-flat',
    answer: longAxis,
  },
  {
    name: 'octave alone sharp',
    sample: [0, 12, 0],
    draw: (random) => [fair(random), off(random), fair(random)],
    fault: 'octave-sharp',
    answer: longAxis,
  },
  {
    name: 'third alone flat',
    sample: [0, 0, -18],
    draw: (random) => [fair(random), fair(random), -thirdOff(random)],
    fault: 'third-flat',
    answer: shortAxis,
  },
  {
    name: 'third alone sharp',
    sample: [0, 0, 18],
    draw: (random) => [fair(random), fair(random), thirdOff(random)],
    fault: 'third-sharp',
    answer: shortAxis,
  },
  {
    name: 'octave flatter than a flat fundamental',
    sample: [-8, -16, 0],
    draw: (random) => {
      const by = between(random, 7, 14);
      return [-by, -1.7 * by, fair(random)];
    },
    fault: 'fundamental-and-octave-flat',
    answer: [above('long-ends')],
  },
  {
    name: 'third flat with a flat fundamental',
    sample: [-12, 0, -18],
    draw: (random) => [-off(random), fair(random), -thirdOff(random)],
    fault: 'fundamental-and-third-flat',
    answer: [above('short-ends')],
  },
  {
    name: 'a top note within two cents',
    isTopNote: true,
    sample: [-1.8, -9, -14],
    draw: (random) => [between(random, -1.7, 1.7), -off(random), -off(random)],
    fault: null,
    answer: 'leave',
  },
  {
    name: 'more than the limit for a professional',
    sample: [-60, -60, -60],
    draw: (random) => {
      const by = between(random, 52, 80);
      return [-by, -by, -by];
    },
    fault: null,
    answer: 'professional',
  },
];

/** Octave and third as they are planted and judged: against the own fundamental. */
export const againstOwn = ([fundamental, octave, third]: Plant): Plant => [
  fundamental,
  octave - fundamental,
  third - fundamental,
];
