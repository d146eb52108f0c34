// Rows on the practice pan: how many of its strokes are heard as what they are, level by level.

import { notesOf } from '../../../src/domain/pans/layout';
import { type PracticeLevel, practiceLevels } from '../../../src/domain/ports/practice-port';
import { createPracticePan } from '../../../src/practice-pan/practice-pan';
import { anyNote, finallyHeard } from '../../dsp/listen-to';
import { seedsFrom } from '../../ear-scenes/seeds';
import { percentOf, quantile } from '../../ear-scenes/statistics';
import { countOf, type NoteOutcome, noteOutcome } from '../../ear-scenes/which-note';
import { placed } from '../../synthetic-sounds/sounds';
import type { Row } from './print-table';

const sampleRate = 48000;
/** What the app asks of a practice stroke. */
const loudness = 0.7;
const pansOfLevel = 4;

interface PracticeStroke {
  readonly outcome: NoteOutcome;
  readonly isKnock: boolean;
  /** Against what is hidden in the note, cents; null where it was not named right or has no octave. */
  readonly fundamental: number | null;
  readonly octave: number | null;
}

export const practiceRows = (): readonly Row[] => practiceLevels.flatMap(rowsOf);

function rowsOf(level: PracticeLevel): readonly Row[] {
  const strokes = seedsFrom(1, pansOfLevel).flatMap((seed) => strokesOn(seed, level));
  const outcomes = strokes.map(({ outcome }) => outcome);
  const right = percentOf(outcomes, (each) => each === 'right');
  const knocks = strokes.filter(({ isKnock }) => isKnock).length;
  const near = (name: 'fundamental' | 'octave'): string => {
    const errors = strokes.flatMap((each) => each[name] ?? []).map(Math.abs);
    const share = percentOf(errors, (error) => error <= 1).toFixed(1);
    return `${name} within 1 cent ${share} %, 95 % within ${quantile(errors, 0.95).toFixed(2)}`;
  };
  return [
    {
      quantity: `practice pan, ${level}, the pan as candidates`,
      target: '>= 98 %',
      measured: `${right.toFixed(1)} % of ${strokes.length} named right; ${countOf(outcomes, 'wrong')} wrong, ${countOf(outcomes, 'asked')} asked, ${knocks} knocks, ${countOf(outcomes, 'refused') - knocks} refused otherwise`,
      isMet: right >= 98,
    },
    {
      quantity: '  hidden detunings',
      target: '',
      measured: `${near('fundamental')}; ${near('octave')}`,
      isMet: null,
    },
  ];
}

function strokesOn(seed: number, level: PracticeLevel): readonly PracticeStroke[] {
  const pan = createPracticePan(seed, { level });
  const notes = notesOf(pan.layout);
  return notes.map((note) => {
    const sound = pan.strike(note, loudness, sampleRate);
    const samples = placed([{ at: 0.3, samples: sound }], { sampleRate, seconds: 2 });
    const all = finallyHeard(samples, sampleRate, { ...anyNote, notes });
    const heard = all.find(({ kind }) => kind === 'strike') ?? all[0] ?? null;
    const truth = pan.truth(note);
    const isRight = heard?.kind === 'strike' && heard.note === note;
    return {
      outcome: noteOutcome(note, heard),
      isKnock: heard?.kind === 'knock',
      fundamental: isRight && truth ? heard.fundamental.cents - truth.fundamentalCents : null,
      octave:
        isRight && truth && heard.octave ? heard.octave.centsFromOwn - truth.octaveCents : null,
    };
  });
}
