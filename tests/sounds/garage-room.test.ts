// The room does what its two numbers say.
import { expect, test } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { garage, largeGarage, type Room, soundInRoom } from './garage-room';

const sampleRate = 44100;
const clickInRoom = (room: Room): Float32Array => {
  const click = new Float32Array(1.2 * sampleRate);
  click[100] = 0.5;
  return soundInRoom(click, sampleRate, room, seededRandom(5));
};
const energy = (samples: Float32Array, from: number, to: number): number =>
  samples.subarray(from, to).reduce((sum, value) => sum + value * value, 0);

for (const [name, room] of [
  ['a garage', garage],
  ['a large garage', largeGarage],
] as const) {
  test(`${name} lets the direct sound through as it was, and its tail has the energy it should`, () => {
    const heard = clickInRoom(room);
    expect(heard[100]).toBeCloseTo(0.5, 5);
    const ratio = 10 * Math.log10((heard[100] ?? 0) ** 2 / energy(heard, 101, heard.length));
    expect(ratio).toBeCloseTo(room.directDb, 2);
    expect(energy(heard, 0, 100)).toBeLessThan(1e-9);
  });

  test(`${name} falls by 60 dB in its time`, () => {
    const heard = clickInRoom(room);
    const level = (share: number): number => {
      const from = 100 + Math.round(share * room.ringSeconds * sampleRate);
      return 10 * Math.log10(energy(heard, from, from + 2000));
    };
    // From a tenth to six tenths of the time: half of the 60 dB.
    expect(level(0.1) - level(0.6)).toBeCloseTo(30, -0.5);
  });
}
