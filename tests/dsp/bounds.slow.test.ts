// In the kernels of the ear no compiler sees an index out of range (`src/dsp/tsconfig.kernels.json`): here it throws.
import { describe, expect, it } from 'vitest';
import { panOnly } from '../ear-scenes/hear-scene';
import { hardScene } from '../sounds/hard-scene';
import { playedLead } from '../sounds/played-lead';
import { deafPhone, type Scene, strikeScene } from '../sounds/scene';
import { checked, withCheckedArrays } from './checked-arrays';
import { everythingHeard } from './listen-to';

/** What is heard of each is so different that together they pass every kernel. */
const sounds: readonly (readonly [string, Pick<Scene, 'samples' | 'sampleRate'>])[] = [
  ['a note whose octave is two lines', strikeScene(2, { pair: true, seconds: 1.05 })],
  ['a bass note at a low rate', strikeScene(3, { ...deafPhone, sampleRate: 22050, note: 36 })],
  ['a hard stroke in a garage', hardScene(4, { room: 'garage', seconds: 1.05 })],
  [
    'strokes that follow too fast',
    playedLead(
      5,
      [0.2, 0.36, 0.5].map((at) => ({ at, note: 64, level: 0.6 })),
      { after: 0.4 },
    ),
  ],
];

describe('the ear reads and writes no place that its arrays do not have', () => {
  it.each(sounds)('in %s', (_, { samples, sampleRate }) => {
    const heard = everythingHeard(samples, sampleRate, panOnly);
    expect(heard.length).toBeGreaterThan(0);
    const again = withCheckedArrays(() => everythingHeard(checked(samples), sampleRate, panOnly));
    expect(again).toEqual(heard);
  });
});

describe('a checked array', () => {
  it('throws where a place is read or written that it does not have', () => {
    const array = withCheckedArrays(() => new Float64Array(3));
    array[2] = 5;
    expect(array[2]).toBe(5);
    expect(() => array[3]).toThrow(RangeError);
    expect(() => array[-1]).toThrow(RangeError);
    expect(() => array[0.5]).toThrow(RangeError);
    expect(() => array[Number.NaN]).toThrow(RangeError);
    expect(() => {
      array[3] = 1;
    }).toThrow(RangeError);
  });

  it('goes on being one through the calls that give the array back', () => {
    const array = withCheckedArrays(() => Float32Array.from([1, 2]).fill(3));
    expect([...array]).toEqual([3, 3]);
    expect(() => array[2]).toThrow(RangeError);
  });
});
