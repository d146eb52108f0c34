// In the kernels of the ear no compiler sees an index out of range (`src/dsp/tsconfig.kernels.json`): here it throws.
import { describe, expect, it } from 'vitest';
import type { StrikeInside } from '../../src/domain/measurement/strike-inside';
import { seconds } from '../../src/domain/tuning/units';
import { takeApart } from '../../src/dsp/partial-sound/take-apart';
import { panOnly } from '../ear-scenes/hear-scene';
import { hardScene } from '../sounds/hard-scene';
import { playedLead } from '../sounds/played-lead';
import { deafPhone, type Scene, strikeScene } from '../sounds/scene';
import { checked, withCheckedArrays } from './checked-arrays';
import { everythingHeard } from './listen-to';
import { plantedStrike, rate, struckAt } from './partial-sound/planted-parts';

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

const everySoundOf = ({ parts, soundOf }: StrikeInside): readonly (readonly number[])[] =>
  parts.flatMap(({ name }) =>
    (['alone', 'target', 'both'] as const).flatMap((which) =>
      ([1, 2] as const).map((slower) => [...soundOf(name, which, slower).samples]),
    ),
  );

describe('a strike is taken apart without a place that its arrays do not have', () => {
  const { strike, sound } = plantedStrike(1, 440);
  // In the shortest there is hardly anything beside the strike: its tracks have their two points at least.
  it.each([0.18, 0.075, 0.03])('in %s s of sound', (length) => {
    const samples = sound.slice(0, Math.round(length * rate));
    const apart = (heard: Float32Array<ArrayBuffer>) => {
      const inside = takeApart(strike, { samples: heard, sampleRate: rate }, seconds(struckAt));
      return { parts: inside.parts, sounds: everySoundOf(inside) };
    };
    const plain = apart(samples);
    expect(plain.parts.length).toBe(3);
    expect(plain.sounds.flat().every(Number.isFinite)).toBe(true);
    expect(withCheckedArrays(() => apart(checked(samples)))).toEqual(plain);
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
