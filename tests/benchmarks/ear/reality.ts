// Simulated strikes and real ones, put through the same figures.
import { notesOf } from '../../../src/domain/pans/layout';
import { createPracticePan } from '../../../src/practice-pan/practice-pan';
import { seedsFrom } from '../../ear-scenes/seeds';
import { hardScene, studio } from '../../sounds/hard-scene';
import { type Scene, strikeScene } from '../../sounds/scene';
import { type StrikeFigures, strikeFigures } from '../../strike-statistics/strike-figures';
import { realTakes } from '../strikes/real-takes';

export interface FiguresOf {
  readonly name: string;
  readonly figures: readonly StrikeFigures[];
}

const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

const ofScene = ({ samples, sampleRate, truth }: Scene): StrikeFigures =>
  strikeFigures({ samples, sampleRate, at: truth.at, nearHz: equal(truth.note) });

const sceneCount = 200;
const practicePans = 7;
const practiceRate = 48000;

/** The mild scenes, the hard ones as a good microphone in a dead room has them, and the practice pan. */
export const simulatedFigures = (): readonly FiguresOf[] => [
  {
    name: 'mild scenes',
    figures: seedsFrom(1, sceneCount).map((seed) => ofScene(strikeScene(seed))),
  },
  {
    name: 'hard scenes',
    figures: seedsFrom(1, sceneCount).map((seed) => ofScene(hardScene(seed, studio))),
  },
  { name: 'practice pan', figures: seedsFrom(1, practicePans).flatMap(practiceFigures) },
];

/** Every note of a practice pan once, soft to loud. */
function practiceFigures(seed: number): readonly StrikeFigures[] {
  const pan = createPracticePan(seed);
  const notes = notesOf(pan.layout);
  return notes.map((note, n) => {
    // 7 and the number of notes have no divisor in common: all loudnesses, in another order than the notes.
    const loudness = 0.15 + 0.85 * (((7 * n + seed) % notes.length) / notes.length);
    return strikeFigures({
      samples: pan.strike(note, loudness, practiceRate),
      sampleRate: practiceRate,
      at: 0,
      nearHz: equal(note),
    });
  });
}

/** The real recordings begin this long before the onset, s (README of their folder). */
const realOnset = 0.005;

/** Null where the folder is not there. */
export function realFigures(): FiguresOf | null {
  const takes = realTakes();
  return (
    takes && {
      name: 'real strikes',
      figures: takes.map(({ samples, sampleRate, midi }) =>
        strikeFigures({ samples, sampleRate, at: realOnset, nearHz: equal(midi) }),
      ),
    }
  );
}
