// Which note was struck: neither the strongest line nor the lowest one, but the one whose score is highest. The score
// weighs what speaks for a note (`note-features`); its weights were fitted on real strikes and scenes.
import type { ListeningContext } from '../../domain/measurement/strike';
import { centsBetween, type MidiNote, midiNote } from '../../domain/tuning/units';
import type { TimedLine } from '../spectrum/line-course';
import { hiddenNotes, type NoteChoice, withOctavesWeighed } from './bass-choices';
import { noteCandidates } from './note-candidates';
import { type NoteEvidence, noteFeatures } from './note-features';
import { knownNote } from './note-places';

/** How far a partial may lie from its place, cents (chosen, no source, as are the next two). */
export const reachOfPartial = 70;
/** A line where the octave of the note below was last measured, and not where its own fundamental was: cents. */
const sameAsMeasured = 4;
const otherThanMeasured = 8;
/** … is not its own, nepers: as many as a clear octave pair is worth by its course alone (common sense, not fitted). */
const forOtherOctave = 4;
/**
 * A note without its fundamental does not count as long as another note explains as much, nepers (chosen, no source).
 */
const forHidden = 3;

/** A choice with the features it was scored by. */
export interface ScoredNote extends NoteChoice {
  readonly features: readonly number[];
}

/** The fitted score by which notes are set against each other, nepers. */
export interface NoteScore {
  readonly ofNote: (features: readonly number[]) => number;
  readonly forExpected: number;
}

/** Candidates for the struck note, best first, each note once; empty if no line can be a fundamental. */
export function chooseNote(
  evidence: NoteEvidence,
  context: ListeningContext,
  { ofNote, forExpected }: NoteScore,
): readonly ScoredNote[] {
  const lines = evidence.timed;
  const best = new Map<MidiNote, ScoredNote>();
  const bonus = (note: MidiNote): number => (note === context.expected ? forExpected : 0);
  const ofLine = new Map<number, { readonly own: number; readonly features: readonly number[] }>();
  for (const { note, line: index, offGrid } of noteCandidates(lines, context)) {
    const line = lines[index];
    if (!line) continue;
    const features = noteFeatures(evidence, line, offGrid);
    const own = ofNote(features) - otherOctave(lines, line, note, context);
    ofLine.set(index, { own, features });
    const score = own + bonus(note);
    if (score > (best.get(note)?.score ?? Number.NEGATIVE_INFINITY)) {
      best.set(note, { note, line: index, fundamental: 'heard', score, features });
    }
  }
  // Where the fundamental is not heard its octave stands for it: so the weights were fitted.
  for (const { note, line, kind, explains } of hiddenNotes(lines, context)) {
    const octave = ofLine.get(line);
    if (!octave || best.has(note)) continue;
    // What speaks for a note on one of its partials speaks for it: the twelfth's octave is no rival of it.
    const own = Math.max(...explains.map((index) => ofLine.get(index)?.own ?? octave.own));
    const score = own - (kind === 'inferred' ? 0 : forHidden) + bonus(note);
    best.set(note, { note, line, fundamental: kind, score, features: octave.features });
  }
  const weighed = withOctavesWeighed(best, lines, context);
  return weighed
    .map((each) => ({ ...each, features: best.get(each.note)?.features ?? [] }))
    .sort((a, b) => b.score - a.score);
}

/** Whether the line is the octave of the note below, going by how both were last measured. */
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
