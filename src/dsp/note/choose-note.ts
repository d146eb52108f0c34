// Which note was struck: neither the strongest line nor the lowest one, but the one whose partials explain
// what was there at once.
import type { ListeningContext } from '../../domain/measurement/strike';
import { centsBetween, type MidiNote, midiNote } from '../../domain/tuning/units';
import { blurOf, isSideband, type TimedLine } from '../spectrum/line-course';
import { hiddenNotes, type NoteChoice, withOctavesWeighed } from './bass-choices';
import { withFirstOfOctave } from './first-of-octave';
import { knownNote, noteAt } from './note-places';

const lowestFundamental = 27;
const highestFundamental = 2000;
/** How far a partial may lie from its place, cents. */
export const reachOfPartial = 70;
const expectedBonus = 7;
/** Partials a note may have; the fifth and sixth are weak and out of tune, but not another note's. */
const ownOrders = [1, 2, 3, 4];

/** A fundamental rises at once (the octave blooms, neighbours more so): early over settled level, dB. */
const promptDb = -5;
const promptWeight = 1;
const mostForLate = 14;
/** Lines that are there at once, this far below the loudest, want to be explained, dB. */
const audibleEarlyDb = -14;
const strayWeight = 0.6;
const mostForStray = 9;
/** A fundamental weaker than its own partials by more than this is doubtful, dB (octave up to +9 seen). */
const weakestFundamentalDb = -8;
const weakWeight = 1.2;
const mostForWeak = 12;
/** The octave does not rise faster than its own fundamental, but for this, dB. */
const fasterOctaveDb = 4;
const fasterWeight = 0.6;
const mostForFaster = 10;
/** A line that was there before was not struck if less was added to it than this part of it, dB. */
const leastAddedDb = -3;
const wasThereDb = -8;
const forOldLine = 20;
const faintestDb = -42;
/** A line where the octave of the note below was last measured, and not where its own fundamental was: cents. */
const sameAsMeasured = 4;
const otherThanMeasured = 8;
const forOtherOctave = 4;
/** A note is not taken to be there without its fundamental as long as another explains as much. */
const forHidden = 3;

const decibel = (ratio: number): number => 20 * Math.log10(Math.max(ratio, 1e-6));

/** Candidates for the struck note, best first, each note once; empty if no line can be a fundamental. */
export function chooseNote(
  lines: readonly TimedLine[],
  context: ListeningContext,
): readonly NoteChoice[] {
  const loudestEarly = Math.max(...lines.map((line) => line.early), 1e-9);
  const loudestSettled = Math.max(...lines.map((line) => line.settled), 1e-9);
  const best = new Map<MidiNote, NoteChoice>();
  lines.forEach((line, index) => {
    if (line.hz < lowestFundamental || line.hz > highestFundamental) return;
    const note = noteAt(line.hz, context);
    if (note === null || decibel(line.settled / loudestSettled) < faintestDb) return;
    if (isSideband(lines, line)) return;
    const score =
      (note === context.expected ? expectedBonus : 0) -
      lateness(line) -
      oldness(line) -
      otherOctave(lines, line, note, context) -
      weakness(lines, line) -
      strays(lines, line, loudestEarly) +
      support(lines, line);
    if (score > (best.get(note)?.score ?? Number.NEGATIVE_INFINITY)) {
      best.set(note, { note, line: index, fundamental: 'heard', score });
    }
  });
  for (const { note, line, kind, asLine } of hiddenNotes(lines, context)) {
    const score =
      (note === context.expected ? expectedBonus : 0) -
      forHidden -
      lateness(asLine) -
      strays(lines, asLine, loudestEarly) +
      support(lines, asLine);
    if (!best.has(note)) best.set(note, { note, line, fundamental: kind, score });
  }
  const weighed = withOctavesWeighed(best, lines, context);
  return [...withFirstOfOctave(weighed, lines, context)].sort((a, b) => b.score - a.score);
}

/** How much of the settled level was there at once, dB; lines that other notes pass on rise late. */
const promptness = (line: TimedLine): number => decibel(line.early / Math.max(line.settled, 1e-9));

const lateness = (line: TimedLine): number =>
  Math.min(mostForLate, promptWeight * Math.max(0, promptDb - promptness(line)));

function oldness(line: TimedLine): number {
  const added = decibel(line.added / Math.max(line.before, 1e-9));
  const wasThere = decibel(line.before / Math.max(line.settled, 1e-9)) > wasThereDb;
  return wasThere && added < leastAddedDb ? forOldLine : 0;
}

/** The line is the octave of the note below, as both were last measured. */
function otherOctave(
  lines: readonly TimedLine[],
  line: TimedLine,
  note: MidiNote,
  context: ListeningContext,
): number {
  const own = knownNote(note, context);
  const below = knownNote(midiNote(note - 12), context);
  if (!own || !below?.octaveHz) return 0;
  const isOctave =
    Math.abs(centsBetween(below.octaveHz, line.hz)) < sameAsMeasured &&
    Math.abs(centsBetween(own.fundamentalHz, line.hz)) > otherThanMeasured &&
    lines.some((each) => Math.abs(centsBetween(below.fundamentalHz, each.hz)) < otherThanMeasured);
  return isOctave ? forOtherOctave : 0;
}

/** A fundamental far below its own partials, or slower than its octave. */
function weakness(lines: readonly TimedLine[], line: TimedLine): number {
  let loudest = line.early;
  for (const order of [2, 3, 4]) {
    loudest = Math.max(loudest, partialNear(lines, line, order)?.early ?? 0);
  }
  const below = weakestFundamentalDb - decibel(line.early / loudest);
  const octave = partialNear(lines, line, 2);
  const faster = octave ? promptness(octave) - promptness(line) - fasterOctaveDb : 0;
  return (
    Math.min(mostForWeak, weakWeight * Math.max(0, below)) +
    Math.min(mostForFaster, fasterWeight * Math.max(0, faster))
  );
}

/** Lines that were there at once and are no partial of this note. */
function strays(lines: readonly TimedLine[], line: TimedLine, loudestEarly: number): number {
  const own = lines.filter((other) =>
    ownOrders.some((order) => Math.abs(centsBetween(order * line.hz, other.hz)) <= reachOfPartial),
  );
  let penalty = 0;
  for (const other of lines) {
    if (own.includes(other)) continue;
    // The first moments are too short to part a line from a stronger one beside it.
    const isBlurred = own.some(
      (each) => each.early >= other.early && Math.abs(each.hz - other.hz) < blurOf(other.hz),
    );
    if (isBlurred || promptness(other) < promptDb - 4 || oldness(other) > 0) continue;
    const over = decibel(other.early / loudestEarly) - audibleEarlyDb;
    penalty += Math.min(mostForStray, strayWeight * Math.max(0, over));
  }
  return penalty;
}

/** A note brings its octave, and most a third partial. */
function support(lines: readonly TimedLine[], line: TimedLine): number {
  const octave = partialNear(lines, line, 2) ? 3 : 0;
  return octave + (partialNear(lines, line, 4) || partialNear(lines, line, 3) ? 1 : 0);
}

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
