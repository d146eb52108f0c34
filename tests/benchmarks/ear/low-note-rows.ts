// The rows on bass notes.
import type { PartialError } from '../../ear-scenes/hear-scene';
import { type BassScenes, basses, lowNotes } from '../../ear-scenes/low-notes';
import { seedsFrom } from '../../ear-scenes/seeds';
import { median, percentOf, quantile } from '../../ear-scenes/statistics';
import { countOf } from '../../ear-scenes/which-note';
import type { Row } from './print-table';

export const lowNoteRows = (): readonly Row[] => basses.flatMap(rowsOf);

const errorsAsText = (errors: readonly PartialError[]): string => {
  if (errors.length === 0) return 'none';
  const sizes = errors.map(({ error }) => Math.abs(error));
  const stated = percentOf(errors, ({ error, sigma }) => Math.abs(error) <= 2 * sigma);
  return `${errors.length}, p50 ${median(sizes).toFixed(2)}, p95 ${quantile(sizes, 0.95).toFixed(2)} cent, ${stated.toFixed(0)} % within 2 stated errors`;
};

function rowsOf(bass: BassScenes): readonly Row[] {
  const all = lowNotes(bass, seedsFrom(3001, 100));
  const count = (outcome: 'right' | 'asked' | 'wrong' | 'refused'): number =>
    countOf(all.outcomes, outcome);
  const good = count('right') + all.askedAmong;
  const guidedWrong = countOf(all.guided, 'wrong');
  return [
    {
      quantity: `low notes, ${bass.name}: right, or asked among`,
      target: '>= 95 %',
      measured: `${((100 * good) / all.outcomes.length).toFixed(0)} % of ${all.outcomes.length}; ${count('right')} right, ${count('asked')} asked (${all.askedAmong} with the struck note among the candidates), ${count('refused')} refused`,
      isMet: good / all.outcomes.length >= 0.95,
      whyNot: bass.whyNot,
    },
    {
      quantity: '  another note than the struck one, no hint',
      target: 'none',
      measured: `${count('wrong')}`,
      isMet: count('wrong') === 0,
    },
    {
      quantity: '  guided to the octave below: recorded as that',
      target: 'none',
      measured: `${all.octaveErrors} of ${all.guidedBelow}; guided to the struck note ${countOf(all.guided, 'right')} right, ${guidedWrong} wrong`,
      isMet: all.octaveErrors === 0 && guidedWrong === 0,
    },
    {
      quantity: '  fundamentals that were heard',
      target: '',
      measured: errorsAsText(all.heard),
      isMet: null,
    },
    {
      quantity: '  fundamentals that were inferred',
      target: '',
      measured: errorsAsText(all.inferred),
      isMet: null,
    },
    { quantity: '  octave', target: '', measured: errorsAsText(all.octaves), isMet: null },
  ];
}
