// Bass notes through the microphones of phones.
import { type MidiNote, midiNote } from '../../src/domain/tuning/units';
import { anyNote } from '../dsp/listen-to';
import { deafPhone, type Scene, type SceneOptions, strikeScene } from '../sounds/scene';
import { errorsOf, hearScene, type PartialError } from './hear-scene';
import { type NoteOutcome, noteOutcome } from './which-note';

export interface BassScenes {
  readonly name: string;
  readonly lowest: number;
  readonly highest: number;
  readonly options: Partial<SceneOptions>;
  readonly whyNot?: string;
}

const deafest: Partial<SceneOptions> = { ...deafPhone, rollOffOrder: 4 };

/** The basses of the trade by their ranges (pans' table of ranges: from Bb1, E1 and B0), and three microphones. */
export const basses: readonly BassScenes[] = [
  { name: 'B0 to B2, first-order roll-off at 150 Hz', lowest: 23, highest: 47, options: {} },
  { name: 'six bass, second order at 60 to 150 Hz', lowest: 34, highest: 51, options: deafPhone },
  { name: 'nine bass, the same', lowest: 28, highest: 54, options: deafPhone },
  { name: 'twelve bass, the same', lowest: 23, highest: 58, options: deafPhone },
  {
    name: 'twelve bass, fourth order',
    lowest: 23,
    highest: 58,
    options: deafest,
    whyNot:
      'such a high-pass takes up to 55 dB off a fundamental: 6 of the 8 that are refused have theirs at 31 to 44 Hz and one or two faint lines left among louder ring partners, and the octave alone names no note; one at 59 Hz with the twelfth loudest counts as a blow; of one at 172 Hz two exchanging lines turn over at one moment and look like lost samples',
  },
];

export interface LowNotes {
  readonly outcomes: readonly NoteOutcome[];
  /** Asked for, with the struck note among the candidates. */
  readonly askedAmong: number;
  /** Errors of the octave, and of fundamentals that were heard and that were inferred, cents. */
  readonly octaves: readonly PartialError[];
  readonly heard: readonly PartialError[];
  readonly inferred: readonly PartialError[];
  /** Guided to the octave below the struck note: how often that was recorded as the lower note. */
  readonly octaveErrors: number;
  readonly guidedBelow: number;
  /** Guided to the struck note itself. */
  readonly guided: readonly NoteOutcome[];
}

const notesOf = ({ lowest, highest }: BassScenes): readonly MidiNote[] =>
  Array.from({ length: highest - lowest + 1 }, (_, n) => midiNote(lowest + n));

export const bassScene = ({ lowest, highest, options }: BassScenes, seed: number): Scene =>
  strikeScene(seed, { lowest, highest, ...options });

/** All notes of the bass as candidates, no hint; and guided, to the struck note and to the octave below it. */
export function lowNotes(bass: BassScenes, seeds: readonly number[]): LowNotes {
  const notes = notesOf(bass);
  const octaves: PartialError[] = [];
  const heardOnes: PartialError[] = [];
  const inferred: PartialError[] = [];
  const outcomes: NoteOutcome[] = [];
  const guided: NoteOutcome[] = [];
  let [askedAmong, octaveErrors, guidedBelow] = [0, 0, 0];
  for (const seed of seeds) {
    const scene = bassScene(bass, seed);
    const { note } = scene.truth;
    const heard = hearScene(scene, { ...anyNote, notes });
    const errors = errorsOf({ scene, heard });
    if (errors.octave) octaves.push(errors.octave);
    if (errors.fundamental && heard?.kind === 'strike') {
      (heard.isInferred ? inferred : heardOnes).push(errors.fundamental);
    }
    const outcome = noteOutcome(note, heard);
    outcomes.push(outcome);
    if (outcome === 'asked' && heard?.kind === 'refused') {
      askedAmong += heard.candidates.includes(midiNote(note)) ? 1 : 0;
    }
    guided.push(
      noteOutcome(note, hearScene(scene, { ...anyNote, notes, expected: midiNote(note) })),
    );
    if (note - 12 < bass.lowest) continue;
    guidedBelow++;
    const below = hearScene(scene, { ...anyNote, notes, expected: midiNote(note - 12) });
    if (below?.kind === 'strike') octaveErrors++;
  }
  return {
    outcomes,
    askedAmong,
    octaves,
    heard: heardOnes,
    inferred,
    octaveErrors,
    guidedBelow,
    guided,
  };
}
