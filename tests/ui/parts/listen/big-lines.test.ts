import { describe, expect, it } from 'vitest';
import { bigLines } from '../../../../src/ui/parts/listen/big-lines';

describe('a sentence as big as a verdict', () => {
  it.each([
    ['again', ['again'], null],
    ['strike E♭6', ['strike', 'E♭6'], null],
    ['strike any note', ['strike', 'any note'], null],
    ['too soft', ['too', 'soft'], null],
    ['too fast, one strike at a time', ['too', 'fast'], 'one strike at a time'],
    ['short ring: strike the middle again', ['short', 'ring'], 'strike the middle again'],
    ['Not this note: E6 is ringing.', ['Not this', 'note'], 'E6 is ringing.'],
    ['that was a knock', ['that was', 'a knock'], null],
  ])('%s', (sentence, lines, todo) => {
    expect(bigLines(sentence)).toEqual({ lines, todo });
  });
});
