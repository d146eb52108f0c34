// Bass notes among the notes that may have been struck: those whose fundamental the phone does not hear, and which
// of two notes an octave apart it was.
// Reaches and levels are chosen, no source; seeded bass notes test them.

import type { ListeningContext } from '../../domain/measurement/strike';
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { centsBetween, type MidiNote, midiNote } from '../../domain/tuning/units';
import { isSideband, type TimedLine } from '../spectrum/line-course';
import { placeOf } from './note-places';
import { deafBelowHz, oddsOfLower } from './octave-question';

/** A note that may have been struck. */
export interface NoteChoice {
  readonly note: MidiNote;
  /** Which line is its fundamental, or its octave where the fundamental is not heard. */
  readonly line: number;
  /** Whether the fundamental is heard and, if not, whether a third partial makes up for it. */
  readonly fundamental: 'heard' | 'inferred' | 'unproven';
  /** Score, dB-like, 0 for a note that explains everything; only differences mean something. */
  readonly score: number;
}

/** How far the octave may lie from its place above the note, cents: pans are out of tune, and so are their octaves. */
const reachOfOctave = 60;
/** How far octave and double octave, or octave and twelfth, may disagree, cents. */
const reachOfRatio = 45;
/** Both start with the strike: they exceed what was there before by this much, dB. */
const leastRiseDb = 9;
/** A third line weaker than this against the octave may be anything, dB. */
const faintestThirdDb = -30;
/** What a neper of odds is worth in score: `leastMargin`, below which a note is asked for, is 2 nepers (88 %). */
const scorePerNeper = 1;
const clearOdds = 2;
/** Odds for the note that is to be struck, nepers. */
const forExpected = 1;
/** Highest odds, nepers, of a note of which only the octave is there: then the user is asked. */
const mostForUnproven = 1;

const decibel = (ratio: number): number => dbOfAmplitude(ratio, 1e-6);

/** A note whose fundamental is not among the lines, to be judged like any other. */
export interface HiddenNote {
  readonly note: MidiNote;
  /** Index of the octave's line. */
  readonly line: number;
  readonly kind: 'inferred' | 'unproven';
  /** Indices of the lines that it explains: its octave, and what confirms it. */
  readonly explains: readonly number[];
}

/**
 * Notes of the pan (or the expected one) that are too low for the phone: an octave that starts with the strike, and
 * no fundamental. With a double octave or twelfth that starts with it and agrees with it the note can be inferred.
 */
export function hiddenNotes(
  lines: readonly TimedLine[],
  context: ListeningContext,
): readonly HiddenNote[] {
  const { notes, expected } = context;
  const possible = notes ?? (expected === null ? [] : [expected]);
  return possible.flatMap((note) => {
    const own = placeOf(note, context);
    if (own > deafBelowHz) return [];
    const line = strongest(lines, 2 * own, reachOfOctave);
    const octave = lines[line];
    if (!octave || !isFresh(octave) || isSideband(lines, octave)) return [];
    if (strongest(lines, octave.hz / 2, reachOfOctave) >= 0) return [];
    const thirds = [2, 1.5].flatMap((times) => {
      const index = strongest(lines, times * octave.hz, reachOfRatio);
      const third = lines[index];
      const isOne =
        third && isFresh(third) && decibel(third.settled / octave.settled) > faintestThirdDb;
      return isOne ? [index] : [];
    });
    const kind = thirds.length > 0 ? 'inferred' : 'unproven';
    return [{ note, line, kind, explains: [line, ...thirds] }];
  });
}

const isFresh = ({ early, before }: TimedLine): boolean =>
  decibel(early / Math.max(before, 1e-9)) > leastRiseDb;

/** Index of the strongest line within `reach` cents of `hz`; −1 for none. */
function strongest(lines: readonly TimedLine[], hz: number, reach: number): number {
  let found = -1;
  lines.forEach((line, index) => {
    if (Math.abs(centsBetween(hz, line.hz)) > reach) return;
    if (line.settled > (lines[found]?.settled ?? 0)) found = index;
  });
  return found;
}

/**
 * The choices with every pair of bass notes an octave apart set against each other: the likelier one takes the
 * better score of both, the other as much less as the odds are against it.
 */
export function withOctavesWeighed(
  choices: ReadonlyMap<MidiNote, NoteChoice>,
  lines: readonly TimedLine[],
  { expected }: ListeningContext,
): readonly NoteChoice[] {
  const weighed = new Map(choices);
  const oddsAt = new Map<MidiNote, number>();
  const highFirst = [...choices.keys()].sort((a, b) => b - a);
  for (const note of highFirst) {
    const [lower, upper] = [weighed.get(note), weighed.get(midiNote(note + 12))];
    const octave = upper && lines[upper.line];
    const below = lower && lines[lower.line];
    if (!octave || !below || upper.fundamental !== 'heard' || octave.hz > 2 * deafBelowHz) continue;
    const isOctave =
      lower.fundamental !== 'heard'
        ? below === octave
        : Math.abs(centsBetween(2 * below.hz, octave.hz)) <= reachOfOctave;
    if (!isOctave) continue;
    const odds = oddsBetween(lower, upper, oddsOfLower(lines, octave), expected);
    oddsAt.set(note, odds);
    const best = Math.max(lower.score, upper.score);
    const less = best - scorePerNeper * Math.abs(odds);
    weighed.set(lower.note, { ...lower, score: odds > 0 ? best : less });
    weighed.set(upper.note, { ...upper, score: odds > 0 ? less : best });
    // Its double octave, if not clearly struck itself, goes with it.
    const double = weighed.get(midiNote(note + 24));
    const doubleOdds = oddsAt.get(midiNote(note + 12));
    if (!double || doubleOdds === undefined || odds < clearOdds) continue;
    const most = best - scorePerNeper * (clearOdds + doubleOdds);
    if (doubleOdds > -clearOdds && double.score > most) {
      weighed.set(double.note, { ...double, score: most });
    }
  }
  return [...weighed.values()];
}

/** The odds of the lower note with what is expected in them, nepers. */
function oddsBetween(
  lower: NoteChoice,
  upper: NoteChoice,
  heard: number,
  expected: MidiNote | null,
): number {
  const forUpper = expected === upper.note ? forExpected : 0;
  // A fundamental that is not heard is inferred from what is heard, never from what is expected.
  const forLower = lower.fundamental === 'heard' && expected === lower.note ? forExpected : 0;
  const odds = heard + forLower - forUpper;
  return lower.fundamental === 'unproven' ? Math.min(mostForUnproven, odds) : odds;
}
