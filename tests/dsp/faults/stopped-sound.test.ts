import { describe, expect, it } from 'vitest';
import { endOfStoppedSound } from '../../../src/dsp/faults/stopped-sound';

const rate = 48000;
const onset = 4800;
const whole = 33600;

/** 440 Hz that fades (time constant in s) and beats, in a little noise; a hand stops it `at` seconds after the onset. */
function note(at: number, decay: number): Float32Array {
  const stop = onset + at * rate;
  return Float32Array.from({ length: whole }, (_, n) => {
    const t = (n - onset) / rate;
    const noise = 1e-4 * Math.sin(n * n);
    if (t < 0) return noise;
    const beat = 1 + 0.9 * Math.cos(2 * Math.PI * 5 * t);
    const stopped = n > stop ? Math.exp(-(n - stop) / (0.003 * rate)) : 1;
    return noise + 0.2 * Math.exp(-t / decay) * beat * stopped * Math.sin(2 * Math.PI * 440 * t);
  });
}

describe('the end of a sound', () => {
  it.each([0.28, 0.36, 0.42])('is where a hand stops it: %f s', (at) => {
    const end = (endOfStoppedSound(note(at, 0.15), onset, whole, rate) - onset) / rate;
    expect(end).toBeGreaterThan(at - 0.02);
    expect(end).toBeLessThan(at + 0.02);
  });

  it('is the end of what was heard where it fades and beats', () => {
    // T60 of 0.4, 1 and 2 s.
    for (const decay of [0.058, 0.145, 0.29]) {
      expect(endOfStoppedSound(note(9, decay), onset, whole, rate)).toBe(whole);
    }
  });

  it('is not looked for in the first moments, nor in silence', () => {
    expect(endOfStoppedSound(note(0.05, 0.15), onset, whole, rate)).toBe(whole);
    expect(endOfStoppedSound(new Float32Array(whole), onset, whole, rate)).toBe(whole);
  });
});
