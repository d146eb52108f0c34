import { describe, expect, it } from 'vitest';
import type { PartialChange } from '../../../../src/domain/bench/bench-course';
import { cents } from '../../../../src/domain/tuning/units';
import {
  benchChangeWords,
  effectSentence,
  topNoteWords,
} from '../../../../src/ui/words/measuring/bench-words';

const moved = (partial: 0 | 1 | 2, by: number, isSure = true): PartialChange => ({
  partial,
  cents: by,
  within: 0.6,
  isSure,
});
const sentence = (...changes: readonly PartialChange[]) =>
  effectSentence(changes, { third: { kind: 'twelfth' } as never });

describe('what the last blows did', () => {
  it('is told as what they raised and lowered, the largest first', () => {
    expect(sentence(moved(0, 7.2), moved(1, 15))).toBe(
      'The blows raised the octave by 15, and the fundamental by 7.',
    );
    expect(sentence(moved(0, 7), moved(1, 15), moved(2, 3))).toBe(
      'The blows raised the octave by 15, the fundamental by 7, and the twelfth by 3.',
    );
    expect(sentence(moved(0, -4), moved(2, 9))).toBe(
      'The blows raised the twelfth by 9, and lowered the fundamental by 4.',
    );
    expect(sentence(moved(1, -6))).toBe('The blows lowered the octave by 6.');
  });

  it('leaves out what is smaller than its uncertainty', () => {
    expect(sentence(moved(0, 0.4, false), moved(1, -6))).toBe('The blows lowered the octave by 6.');
    expect(sentence(moved(0, 0.4, false))).toBe('The blows moved nothing that can be measured.');
    expect(benchChangeWords(moved(0, 0.4, false))).toBe('no change');
  });

  it('never says “octave +15” for a change that is not against the own fundamental', () => {
    expect(benchChangeWords(moved(1, 15))).toBe('raised by 15 ± 0.6');
    expect(benchChangeWords(moved(1, -3))).toBe('lowered by 3 ± 0.6');
  });
});

describe('a top note that is in tune', () => {
  it('has its partials named that the work moved away, and none otherwise', () => {
    const worse = { partial: 'octave', before: cents(-1), now: cents(-7) } as const;
    expect(topNoteWords([worse])).toBe(
      'The work moved these away from their note: octave −1 → −7.',
    );
    expect(topNoteWords([])).toBe('');
  });
});
