// Why blows are suggested at a place, in which steps, and what they are expected to move: no sentence over 25 words.

import type { PartialOff, SuggestedBlows } from '../../../domain/advice/advice';
import type { Must, TradeCase } from '../../../domain/advice/trade-cases';
import { partialIndices } from '../../../domain/numbers/three-partials';
import type { Reading } from '../../../domain/reading/reading';
import type { BlowPlace, BlowWhere } from '../../../domain/records/blow-places';
import { pluralOf } from '../count-words';
import { listWords, rowWords } from '../list-words';
import { signedCents, words } from '../words';
import { benchWords, partialName } from './bench-words';

type Third = Pick<Reading, 'third'> | null;

/** "3 light blows: ends of the long axis, from above". */
export function blowsWords({ count, firmness, place, side }: SuggestedBlows): string {
  const kind = benchWords.firmnesses[firmness];
  const blows = pluralOf(count, `one ${kind} blow`, `${count} ${kind} blows`);
  return `${blows}: ${benchWords.places[place]}, ${benchWords.sides[side]}`;
}

/** "The octave is flat. The octave alone must rise. …" */
export function reasonWords(advice: SuggestedBlows, reading: Third, setsHere: number): string {
  return [
    offWords(advice.off, reading),
    capital(`${mustWords(advice.step, reading)}.`),
    byItselfWords(advice, reading),
    advice.aim === 'try' ? trialWords(advice, reading) : knownWords(setsHere),
  ]
    .filter((each) => each !== '')
    .join(' ');
}

const knownWords = (setsHere: number): string =>
  setsHere === 0
    ? 'So says the trade; this pan has shown nothing here yet.'
    : `This pan has shown in ${pluralOf(setsHere, 'one set', `${setsHere} sets`)} what blows do here.`;

function trialWords({ step }: SuggestedBlows, reading: Third): string {
  return step.isFoundByTrying
    ? `Nobody can know which way blows here move ${movedBy(step, reading)}. Then strike, and see.`
    : 'How much they do here, and whether they do it, is not known yet. Then strike, and see.';
}

/** "the octave alone must rise". */
export function mustWords({ must }: Pick<TradeCase, 'must'>, reading: Third): string {
  const moved = partialIndices.filter((k) => must[k] !== 'stay');
  const verb = moved.some((k) => must[k] === 'up') ? 'must rise' : 'must fall';
  if (moved.length === 3) return `the whole note ${verb}`;
  const names = listWords(moved.map((k) => `the ${partialName(k, reading)}`));
  return `${names} ${pluralOf(moved.length, 'alone', 'together')} ${verb}`;
}

const movedBy = ({ must }: Pick<TradeCase, 'must'>, reading: Third): string =>
  listWords(
    partialIndices.filter((k) => must[k] !== 'stay').map((k) => `the ${partialName(k, reading)}`),
  );

/** What is off now and comes right without being worked on. */
function byItselfWords({ off, step, later }: SuggestedBlows, reading: Third): string {
  const worked = (k: 0 | 1 | 2): boolean =>
    [step, ...later].some(({ must }) => must[k] !== ('stay' satisfies Must));
  const names = off
    .map(({ partial }) => numberOf[partial])
    .filter((k) => !worked(k))
    .map((k) => `the ${partialName(k, reading)}`);
  if (names.length === 0) return '';
  return capital(`${listWords(names)} then ${pluralOf(names.length, 'is', 'are')} good again.`);
}

/** All steps before the first blow, one sentence each; none where one step is all. */
export function planWords({ step, place, side, later }: SuggestedBlows, reading: Third): string[] {
  if (later.length === 0) return [];
  return [
    `Step 1: ${mustWords(step, reading)}, ${whereWords({ place, side })}.`,
    ...later.map((each, k) => `Step ${k + 2}: ${mustWords(each, reading)}, ${placesWords(each)}.`),
    'Strike after each step: what comes next may change.',
  ];
}

const whereWords = ({ place, side }: BlowWhere): string =>
  `${benchWords.places[place]} ${benchWords.sides[side]}`;

/** "corners between the axes from above or middle from below". */
export function placesWords({ places }: Pick<TradeCase, 'places'>): string {
  const byPlace = new Map<BlowPlace, string[]>();
  for (const { place, side } of places) {
    byPlace.set(place, [...(byPlace.get(place) ?? []), benchWords.sides[side]]);
  }
  return [...byPlace]
    .map(([place, sides]) => `${benchWords.places[place]} ${sides.join(' or ')}`)
    .join(', or ');
}

function offWords(off: readonly PartialOff[], reading: Third): string {
  const say = (isFlat: boolean): string => {
    const names = off
      .filter(({ cents }) => cents < 0 === isFlat)
      .map(({ partial }) => `the ${partialName(numberOf[partial], reading)}`);
    if (names.length === 0) return '';
    const verb = pluralOf(names.length, 'is', 'are');
    return `${listWords(names)} ${verb} ${isFlat ? words.flat : words.sharp}`;
  };
  const both = [say(true), say(false)].filter((each) => each !== '');
  return both.length === 0 ? '' : `${capital(listWords(both))}.`;
}

const numberOf = { fundamental: 0, octave: 1, third: 2 } as const;

/** "fundamental up 4 (+1 to +7), octave up 6 (+2 to +10)": nine times in ten it is within these. */
export const expectedWords = (
  { expected }: Pick<SuggestedBlows, 'expected'>,
  reading: Third,
): string =>
  rowWords(
    partialIndices.map((k) => {
      const [low, high] = expected.interval90[k];
      const moved = Math.round(Math.abs(expected.mean[k]));
      const way = moved === 0 ? 'hardly' : `${expected.mean[k] > 0 ? 'up' : 'down'} ${moved}`;
      return `${partialName(k, reading)} ${way} (${signedCents(low)} to ${signedCents(high)})`;
    }),
  );

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
