// Rows on which note was struck.
import type { HeardScene } from '../../ear-scenes/hear-scene';
import { percentOf } from '../../ear-scenes/statistics';
import {
  countOf,
  type NoteOutcome,
  noteOutcome,
  realOutcomes,
  wrongNoteOutcome,
} from '../../ear-scenes/which-note';
import type { Row } from './print-table';

const counted = (outcomes: readonly NoteOutcome[]): string => {
  const right = percentOf(outcomes, (each) => each === 'right').toFixed(1);
  const others = (['asked', 'wrong', 'refused'] as const).map(
    (each) => `${countOf(outcomes, each)} ${each}`,
  );
  return `${right} % of ${outcomes.length} right; ${others.join(', ')}`;
};

const outcomeOf = ({ scene, heard }: HeardScene): NoteOutcome =>
  noteOutcome(scene.truth.note, heard);

const share = (outcomes: readonly NoteOutcome[]): number =>
  countOf(outcomes, 'right') / outcomes.length;

export async function noteRows(
  guided: readonly HeardScene[],
  onPan: readonly HeardScene[],
): Promise<readonly Row[]> {
  const scenes = guided.map(({ scene }) => scene);
  const outcomes = onPan.map(outcomeOf);
  const real = await realOutcomes();
  const guidedOutcomes = guided.map(outcomeOf);
  const wrongNotes = scenes.map(wrongNoteOutcome);
  const refused = percentOf(wrongNotes, (each) => each === 'refused by name');
  const recorded = wrongNotes.filter((each) => each === 'recorded').length;
  return [
    {
      quantity: 'which note, the pan as candidates, no hint',
      target: '>= 98 %',
      measured: counted(outcomes),
      isMet: share(outcomes) >= 0.98,
    },
    {
      quantity: '  the real recordings',
      target: '>= 98 %',
      measured: counted(real),
      isMet: share(real) >= 0.98,
    },
    {
      quantity: '  guided order',
      target: '100 %',
      measured: counted(guidedOutcomes),
      isMet: share(guidedOutcomes) === 1,
    },
    {
      quantity: '  guided, another note refused by its name',
      target: '100 %',
      measured: `${refused.toFixed(1)} % of ${scenes.length}; ${recorded} recorded as the expected note`,
      isMet: refused === 100,
    },
  ];
}
