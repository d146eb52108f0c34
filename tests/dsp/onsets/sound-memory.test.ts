import { describe, expect, it } from 'vitest';
import { seconds } from '../../../src/domain/tuning/units';
import { SoundMemory } from '../../../src/dsp/onsets/sound-memory';

/** Sample k of a listening has the value k. */
function counted(from: number, length: number): Float32Array {
  return Float32Array.from({ length }, (_, k) => from + k);
}

describe('the memory of the newest sound', () => {
  it('gives back any stretch of the last seconds, whatever the blocks were', () => {
    const memory = new SoundMemory(1000);
    let at = 0;
    for (const length of [1, 999, 128, 3000, 4096, 700, 77]) {
      memory.push(counted(at, length));
      at += length;
      const first = Math.max(0, at - 1500);
      const cut = memory.cut(seconds(first / 1000), seconds(1));
      expect([...(cut ?? [])]).toEqual([...counted(first, Math.min(1000, at - first))]);
    }
  });

  it('says when a stretch has been heard to its end', () => {
    const memory = new SoundMemory(1000);
    memory.push(counted(0, 500));
    expect(memory.has(seconds(0.5))).toBe(true);
    expect(memory.has(seconds(0.501))).toBe(false);
  });

  it('does not make up what it has forgotten or not heard', () => {
    const memory = new SoundMemory(1000);
    memory.push(counted(0, 9000));
    expect(memory.cut(seconds(4), seconds(1))).toBeNull();
    expect(memory.cut(seconds(9), seconds(1))).toBeNull();
    expect(memory.cut(seconds(8.5), seconds(1))?.length).toBe(500);
  });
});
