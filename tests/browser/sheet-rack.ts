// A lead with everything a sheet can tell, and a pan of several drums: invented, for tests of the sheet.
import { builtInLayouts } from '../../src/domain/pans/layouts/built-in-layouts';
import { type RackRecord, roundOf } from '../../src/domain/records/rack-records';
import { hertz, instant } from '../../src/domain/tuning/units';
import { day, firstDay, markSample, startSample } from '../domain/rounds/round-sample';
import {
  sampleBlows,
  sampleKnockCheck,
  sampleStopgap,
  sampleVisit,
} from '../storage/rack/rack-sample';
import { asPan, leadNotes, panWith, type RoundSketch } from './seeded-pans';

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

const softRound = roundOf(startSample({ day: 210 }));

/** The same lead after a second fall, on day 210: the soft round of that knock check, with what differs from a true note. */
const fallenAgain = (off: RoundSketch['off']): readonly RackRecord[] => [
  ...knockedLead,
  ...panWith({}, [
    { day: 210, shift: 6, only: leadNotes.filter((note) => note !== 76), ...(off && { off }) },
  ]).filter(({ kind }) => kind !== 'pan-edit'),
  // It gave no sound to measure at all.
  {
    ...markSample(76, 'skipped', startSample({ day: 210 })),
    at: on(210, 0.5),
    refused: { knocks: 4, heardAsSeveral: 0 },
  },
  { ...sampleKnockCheck('check-2'), at: on(210), round: softRound, looks: [], remarks: '' },
];

const shortly = { decay: 0.1 };
const noisily = { buzz: -15 };

/** Each sign of damage is planted in a note, two in D5; C4 is marked as dead and E4 as buzzing besides. */
export const damagedLead = fallenAgain({
  60: shortly,
  62: { octave: null },
  64: noisily,
  66: { third: null },
  69: shortly,
  71: { strikes: [0, -6, -12, -18] },
  73: { rival: 14 },
  74: { ...shortly, ...noisily },
});

/** As much as a sheet of a lead can have to say: no third, a walk and a doubled octave on nearly every note. */
export const ruinedLead = fallenAgain(
  Object.fromEntries(
    leadNotes.map((note) => [note, { third: null, rival: 14, strikes: [0, -6, -12, -18] }]),
  ),
);

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
