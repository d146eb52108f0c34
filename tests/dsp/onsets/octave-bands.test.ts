import { expect, it } from 'vitest';
import { OctaveBands } from '../../../src/dsp/onsets/octave-bands';

it('digital silence after a sound leaves no number in the bands that is too small to count with quickly', () => {
  const sampleRate = 48_000;
  const bands = new OctaveBands(sampleRate);
  const energies = new Float64Array(bands.centres.length);
  const step = 192;
  const sound = Float64Array.from({ length: step }, (_, n) => Math.sin(n) + Math.sin(0.01 * n));
  bands.take(sound, step, energies);
  expect(Math.min(...energies)).toBeGreaterThan(0);
  // The lowest band falls by a factor of e in 1/(π·45) s: by 1e-60 in a second, to subnormal numbers in five.
  for (let taken = 0; taken < 1.5 * sampleRate; taken += step) {
    bands.take(new Float64Array(step), step, energies);
  }
  expect([...energies]).toEqual(bands.centres.map(() => 0));
});
