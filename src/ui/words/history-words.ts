// What a pan's and a note's history say.

import type { RoundWay } from '../../domain/records/rack-records';
import type { Trend } from '../../domain/rounds/pan-drift';
import {
  farFromUsualBy,
  isWarmthKnown,
  type PitchByWarmth,
} from '../../domain/rounds/pitch-by-warmth';
import type { RoundResult } from '../../domain/rounds/round-result';
import { centsWords, counted } from './count-words';
import { momentWords } from './day-words';
import { a4Words, degrees, resultWords, signedTenths } from './result-words';
import { tenthsUp, words } from './words';

export const historyWords = {
  title: 'History',
  moreRounds: (count: number) => `Show more: ${count} older rounds`,
  readAll: (count: number) => `Read all ${count} rounds for the table`,
  noRounds: 'No round of this pan was finished yet. Its history begins with the first.',
  noteNever: 'This note has not been heard yet.',
  oneRound: 'One round so far. After the next one this shows how the pan moves.',
  noteOnPan: (pan: string) => `on ${pan}`,
  notOnPan: 'This note is not on the pan any more. Its readings are kept.',
  rounds: 'Rounds',
  driftTitle: 'How the pan moves',
  panPitch: 'pan pitch',
  unevenness: 'unevenness',
  table: 'Values in cents',
  day: 'day',
  temperature: '°C',
  unknown: 'unknown',
  noteKey: (good: string) =>
    `Cents. Shaded: good (${good}). Bars: where the value surely lies. Hollow: provisional.`,
  panKey:
    'Cents from the band’s pitch; unevenness: how far a note lies from the pan pitch on average. Hollow: provisional.',
  marks: 'Marks',
  markedOn: (mark: string, day: string) => `${mark}, marked ${day}`,
  unmarkedOn: (day: string) => `mark taken back ${day}`,
  provisional: 'provisional',
  open: 'not finished',
  noneOut: 'none out',
  outOf: (out: number) => `${counted(out, 'note')} out`,
  allReadings: 'All readings as a table (CSV)',
  allName: (pan: string) => `${pan} all readings.csv`,
} as const;

/** Two standard errors: what a person means by "give or take". */
const giveOrTake = 2;
/** A slope this unsure says nothing, cents a year. */
const worthless = 30;

/** The slope of the pan pitch in words, with its uncertainty. */
export function pitchTrendWords(trend: Trend | null): string {
  const slope = slopeWords(trend);
  switch (slope.kind) {
    case 'unknown':
      return 'Too few settled rounds, too close together, to say where the pan pitch goes.';
    case 'still':
      return `Too early to say whether the pan pitch drifts: ${slope.amount}.`;
    case 'moves':
      return `The pan pitch ${slope.isUp ? 'rises' : 'drops'} ${slope.amount}.`;
  }
}

/** The same for how uneven the notes are among themselves; empty where nothing is known. */
export function unevennessTrendWords(trend: Trend | null): string {
  const slope = slopeWords(trend);
  switch (slope.kind) {
    case 'unknown':
      return '';
    case 'still':
      return 'The notes keep their places among themselves.';
    case 'moves':
      return slope.isUp
        ? `The notes drift apart: ${slope.amount}.`
        : `The notes come closer together: ${slope.amount}.`;
  }
}

type Slope =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'still'; readonly amount: string }
  | { readonly kind: 'moves'; readonly isUp: boolean; readonly amount: string };

function slopeWords(trend: Trend | null): Slope {
  if (!trend) return { kind: 'unknown' };
  const unsure = giveOrTake * trend.sigmaCents;
  if (unsure > worthless) return { kind: 'unknown' };
  const whole = Math.round(Math.abs(trend.centsPerYear));
  const take = Math.max(1, Math.ceil(unsure));
  const amount = `${centsWords(whole)} a year, give or take ${take}`;
  return whole > take
    ? { kind: 'moves', isUp: trend.centsPerYear > 0, amount }
    : { kind: 'still', amount };
}

/** How the air moves the pitch: "about −1 cent per °C on this pan, give or take 0.6". */
export function warmthWords(found: PitchByWarmth | null): string {
  if (!found) return '';
  const { slope, within, rounds } = found;
  const amount = `${signedTenthsShort(slope)} per °C`;
  const range = `give or take ${tenthsUp(within)}`;
  return isWarmthKnown(found)
    ? `The air moves its pitch: about ${amount} on this pan, ${range} (${counted(rounds, 'round')}).`
    : `Too early to say how the air moves its pitch: ${amount}, ${range} (${counted(rounds, 'round')}).`;
}

/** "−1 cent", "−0.6 cents". */
function signedTenthsShort(slope: number): string {
  const size = Number(Math.abs(slope).toFixed(1));
  return `${size === 0 ? '' : slope < 0 ? '−' : '+'}${counted(size, 'cent')}`;
}

/** The drift as it would be if every round had been taken in the usual air; empty where that is not known. */
export const withoutWeatherWords = (found: PitchByWarmth | null, trend: Trend | null): string =>
  found && isWarmthKnown(found)
    ? `Without the weather (all at ${degrees(Number(found.usual.toFixed(1)))}): ${pitchTrendWords(trend)}`
    : '';

/** "8 °C warmer than usual". */
export const farAirWords = (by: number | null): string =>
  by === null
    ? ''
    : `${degrees(Math.round(Math.abs(by)))} ${by < 0 ? 'colder' : 'warmer'} than usual`;

/** One round of the list: when, and what it found. */
export const roundWords = (result: RoundResult, usualAir: number | null = null) => ({
  title: momentWords(result.at),
  found: outWords(result),
  asides: [
    ways[result.way],
    result.panPitch
      ? `${a4Words(result.panPitch.a4)} (${signedTenths(result.panPitch.cents)})`
      : '',
    result.conditions.temperature === null ? '' : degrees(result.conditions.temperature),
    farAirWords(farFromUsualBy(result.conditions.temperature, usualAir)),
    result.isProvisional ? historyWords.provisional : '',
  ]
    .filter((each) => each !== '')
    .join(' · '),
});

const ways: Readonly<Record<RoundWay, string>> = resultWords.ways;

function outWords({ standings: { out, avoid } }: RoundResult): string {
  return out + avoid === 0 ? historyWords.noneOut : historyWords.outOf(out + avoid);
}

/** "from +2.1 to −9.2 in 4 readings", for those who do not see the chart. */
export function courseWords(values: readonly { readonly cents: number }[]): string {
  const [first, last] = [values[0], values.at(-1)];
  if (!first || !last) return words.notHeard;
  if (values.length === 1) return `${signedTenths(first.cents)} in one reading`;
  return `from ${signedTenths(first.cents)} to ${signedTenths(last.cents)} in ${values.length} readings`;
}
