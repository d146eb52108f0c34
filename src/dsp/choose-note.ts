// Which note was struck: neither the strongest line nor the lowest one, but the one that rose at once
// and carries the others over it.
import type { ListeningContext } from '../domain/measurement/strike';
import { frequencyOf, nearestNote } from '../domain/tuning/equal-temperament';
import { centsBetween, hertz, type MidiNote } from '../domain/tuning/units';

/** A line with its course in time; amplitudes are linear. */
export interface TimedLine {
  readonly hz: number;
  /** In the first moments after the onset. */
  readonly early: number;
  /** In the measuring window. */
  readonly settled: number;
  /** Just before the onset. */
  readonly before: number;
}

export interface NoteChoice {
  readonly note: MidiNote;
  readonly line: number;
  /** Score, dB-like; only differences mean something. */
  readonly score: number;
}

const lowestFundamental = 27;
const highestFundamental = 2000;
/** How far a line may lie from a note and still be its fundamental, cents. */
const reachOfNote = 60;
const reachOfExpected = 110;
/** How far a partial may lie from its place, cents. */
export const reachOfPartial = 70;
const expectedBonus = 7;

const decibel = (ratio: number): number => 20 * Math.log10(Math.max(ratio, 1e-6));
const clamp = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));

/** Candidates for the struck note, best first; empty if no line can be a fundamental. */
export function chooseNote(
  lines: readonly TimedLine[],
  context: ListeningContext,
): readonly NoteChoice[] {
  const loudestEarly = Math.max(...lines.map((line) => line.early), 1e-9);
  const loudestSettled = Math.max(...lines.map((line) => line.settled), 1e-9);
  const choices: NoteChoice[] = [];
  lines.forEach((line, index) => {
    const note = noteAt(line.hz, context);
    if (note === null) return;
    const early = decibel(line.early / loudestEarly);
    const settled = decibel(line.settled / loudestSettled);
    if (settled < -42) return;
    let score = 0.55 * early + 0.35 * settled + 0.8 * clamp(promptness(line) + 3, -15, 0);
    if (partialNear(lines, line, 2)) score += 4;
    if (partialNear(lines, line, 4) || partialNear(lines, line, 3)) score += 2;
    score -= couldBePartial(lines, line);
    if (line.before > 0.4 * line.settled) score -= 20;
    if (note === context.expected) score += expectedBonus;
    choices.push({ note, line: index, score });
  });
  return choices.sort((a, b) => b.score - a.score);
}

/** How much of the settled level was there at once, dB; lines that other notes pass on rise late. */
const promptness = (line: TimedLine): number => decibel(line.early / Math.max(line.settled, 1e-9));

/** The line nearest to `order` times the line's frequency, within reach. */
export function partialNear(
  lines: readonly TimedLine[],
  fundamental: TimedLine,
  order: number,
): TimedLine | null {
  let found: TimedLine | null = null;
  for (const line of lines) {
    const away = Math.abs(centsBetween(order * fundamental.hz, line.hz));
    if (away <= reachOfPartial && (found === null || line.settled > found.settled)) found = line;
  }
  return found;
}

/** Penalty when a prompt line below explains this one as its octave, twelfth or double octave. */
function couldBePartial(lines: readonly TimedLine[], line: TimedLine): number {
  let penalty = 0;
  for (const lower of lines) {
    for (const order of [2, 3, 4]) {
      const away = Math.abs(centsBetween(order * lower.hz, line.hz));
      if (away > reachOfPartial || lower.before > 0.4 * lower.settled) continue;
      const louderBy = decibel(line.early / Math.max(lower.early, 1e-9));
      if (louderBy < 18 && promptness(lower) > -7)
        penalty = Math.max(penalty, order === 3 ? 6 : 10);
    }
  }
  return penalty;
}

function noteAt(hz: number, context: ListeningContext): MidiNote | null {
  if (hz < lowestFundamental || hz > highestFundamental) return null;
  const { expected, notes, a4 } = context;
  if (expected !== null) {
    const away = Math.abs(centsBetween(frequencyOf(expected, a4), hz));
    if (away <= reachOfExpected) return expected;
  }
  if (notes === null) return nearestNote(hertz(hz), a4);
  let best: MidiNote | null = null;
  let nearest = reachOfNote;
  for (const note of notes) {
    const away = Math.abs(centsBetween(frequencyOf(note, a4), hz));
    if (away <= nearest) {
      nearest = away;
      best = note;
    }
  }
  return best;
}
