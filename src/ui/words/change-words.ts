// What changed between two rounds, in words.

import type { NoteStanding } from '../../domain/reading/note-standing';
import type { NoteChange, RoundChanges } from '../../domain/rounds/round-changes';
import type { ThirdKind } from '../../domain/tuning/third-kind';
import type { Cents } from '../../domain/tuning/units';
import { centsWords, counted, pluralOf } from './count-words';
import { rowWords } from './list-words';
import { rackWords } from './rack-words';
import { degrees, signedTenths } from './result-words';
import { partialSigns } from './standing-words';
import { signedCents, words } from './words';

export const changeWords = {
  title: 'What changed',
  view: 'Show on the pan',
  views: { now: 'How it is', change: 'What changed' },
  since: 'Since',
  first: 'This is the first finished round of this pan. What changed is shown after the next one.',
  reading: 'Reading the other round',
  panStayed: 'The pan as a whole has not changed.',
  panUnknown: 'Too few notes were heard in both rounds to say how the pan as a whole changed.',
  provisional: 'One of the two rounds is provisional: heat moves many notes the same way.',
  noneChanged: 'No note changed by itself.',
  noChange: 'no change',
  moved: (count: number) => pluralOf(count, 'changed by itself', 'changed by themselves'),
  notBoth: 'not heard in both rounds',
  quiet: (count: number) => `${counted(count, 'note')}: no sure change.`,
  standing: (before: string, now: string) => `${before} before, ${now} now`,
} as const;

/** What most notes did together: "The whole pan rose 3 cents, give or take 1." */
export function panShiftWords({ panShift }: RoundChanges): string {
  if (!panShift) return changeWords.panUnknown;
  if (!panShift.hasChanged || Math.round(Math.abs(panShift.cents)) === 0)
    return changeWords.panStayed;
  const way = panShift.cents < 0 ? 'dropped' : 'rose';
  const whole = Math.round(Math.abs(panShift.cents));
  const unsure = Math.max(1, Math.ceil(panShift.uncertainCents));
  return `The whole pan ${way} ${centsWords(whole)}, give or take ${unsure}.`;
}

/** "24 °C then, 27 °C now."; empty where neither is known. */
export function temperatureWords({ temperatures: { before, now } }: RoundChanges): string {
  if (before !== null && now !== null) return `${degrees(before)} then, ${degrees(now)} now.`;
  if (before !== null) return `${degrees(before)} then, unknown now.`;
  return now === null ? '' : `Unknown then, ${degrees(now)} now.`;
}

export interface ShownChange {
  readonly name: string;
  /** Before the number on the map; none for the fundamental. */
  readonly sign: string;
  readonly cents: Cents;
}

/** The partials of a note that changed by themselves, most first; `third` is the kind it has. */
export function changedPartials(
  { beyondPan, octave, third: thirdChange }: NoteChange,
  third: ThirdKind | null,
): readonly ShownChange[] {
  const named = third ? { name: words.third[third], sign: partialSigns[third] } : null;
  return [
    { name: words.fundamental, sign: '', change: beyondPan },
    { name: words.octave, sign: partialSigns.octave, change: octave },
    { ...(named ?? { name: words.thirdUnknown, sign: '' }), change: thirdChange },
  ]
    .flatMap(({ name, sign, change }) =>
      change?.hasChanged ? [{ name, sign, cents: change.cents }] : [],
    )
    .sort((one, other) => Math.abs(other.cents) - Math.abs(one.cents));
}

/** "fundamental −9, octave +4". */
export const changeLine = (parts: readonly ShownChange[]): string =>
  rowWords(parts.map(({ name, cents }) => `${name} ${signedChange(cents)}`));

/** Signed whole cents, or tenths where a sure change would read 0. */
export const signedChange = (cents: number): string =>
  Math.round(Math.abs(cents)) === 0 ? signedTenths(cents) : signedCents(cents);

/** "good before, out now"; empty where the standing is the same. */
export function standingChange({ standings: { before, now } }: NoteChange): string {
  return before === now ? '' : changeWords.standing(standingIn(before), standingIn(now));
}

const standingIn = (standing: NoteStanding): string =>
  standing === 'avoid' ? 'to avoid' : rackWords.standings[standing];
