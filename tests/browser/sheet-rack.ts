// A lead with everything a sheet can tell, and a pan of several drums: invented, for tests of the sheet.
import { builtInLayouts } from '../../src/domain/pans/built-in-layouts';
import type { RackRecord } from '../../src/domain/records/rack-records';
import { hertz, instant } from '../../src/domain/tuning/units';
import { day, firstDay } from '../domain/work/round-sample';
import { sampleBlows, sampleKnockCheck, sampleStopgap, sampleVisit } from '../storage/rack-sample';
import { asPan, panWith } from './seeded-pans';

const on = (days: number, hours = 0) => instant(firstDay + days * day + hours * 3600 * 1000);

/** Signs that would end a text or an attribute, if they were not escaped. */
export const awkward = `<b onclick="alert(1)">Heron</b> & 'Co'`;

const rounds = [
  { day: 0, conditions: { temperature: 22 } },
  {
    day: 40,
    shift: 2,
    off: {
      62: { fundamental: -4, third: 3, thirdKind: 'twelfth' as const },
      65: { fundamental: 3 },
    },
    conditions: { temperature: 24 },
  },
  {
    day: 200,
    shift: 6,
    off: {
      62: { fundamental: -26, octave: 2, third: 31, thirdKind: 'twelfth' as const },
      65: { fundamental: 22 },
      67: { fundamental: 1, octave: 2, rival: 14 },
      71: { strikes: [0, -6, -12, -18] as const },
      74: { fundamental: -9, octave: 1 },
      78: { fundamental: 1, octave: 18 },
      84: { fundamental: 41 },
    },
    conditions: { temperature: 26 },
  },
];

/** Tuned on day 30; a knock, blows on two notes, a magnet and marks since. The newest round is that of day 200. */
export const knockedLead: readonly RackRecord[] = [
  ...panWith(
    {
      name: 'Heron',
      owner: 'Northside',
      maker: 'A workshop by the sea',
      serial: 'HL 14',
      finish: 'chrome',
      remarks: 'A dent on the left.',
      wanted: 'Fine tuning; look at C4 and at the rim',
      wantedBy: 'before 20 August',
    },
    rounds,
    { 60: 'dead', 64: 'buzzing' },
  ),
  sampleVisit('visit-old', { visitedAt: on(-200), who: 'Somebody else' }),
  sampleVisit('visit-30', {
    visitedAt: on(30),
    who: 'The tuner from the coast',
    done: 'Fine tuning of all notes.',
  }),
  sampleVisit('looked-90', {
    visitedAt: on(90),
    who: '',
    done: 'Looked at C4 only.',
    startsBaseline: false,
  }),
  {
    ...sampleKnockCheck('check-1'),
    at: on(190),
    looks: [
      { look: 'rim', answer: 'yes', photo: null },
      { look: 'crack', answer: 'no', photo: null },
    ],
    remarks: 'Fell off the stand.',
  },
  { ...sampleBlows('blows-before', 62), at: on(10), count: 99 },
  { ...sampleBlows('blows-1', 62), at: on(100), count: 4 },
  { ...sampleBlows('blows-2', 62), at: on(101), count: 3, logged: null },
  { ...sampleBlows('blows-3', 74), at: on(102), count: null },
  { ...sampleStopgap('magnet-1', 65), at: on(195) },
];

const layoutCalled = (id: string) => {
  const found = builtInLayouts.find(({ layout }) => layout.id === id)?.layout;
  if (!found) throw new Error(`no layout ${id}`);
  return found;
};

/** One pan of each layout that asks most of the page: two drums, six, and the most drums there are. */
export const otherPans: readonly RackRecord[] = [
  'double-second',
  'six-bass-b-flat',
  'twelve-bass',
].flatMap((id) =>
  asPan(id, panWith({ name: id, layout: layoutCalled(id), a4: hertz(442) }, rounds.slice(2))),
);

export const nameOnly = (id: string, name: string): readonly RackRecord[] =>
  asPan(id, panWith({ name, remarks: name, owner: name, wanted: name }, rounds.slice(1)));
