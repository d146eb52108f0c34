import { describe, expect, it } from 'vitest';
import { hannSum } from '../../../src/dsp/spectrum/hann-sum';
import { array, assert, double, float, integer, property } from '../../properties';
import { checked } from '../checked-arrays';

const line = (amplitude: number, cycles: number, phase: number, length: number) =>
  Float32Array.from({ length }, (_, n) => amplitude * Math.cos(2 * Math.PI * cycles * n + phase));

/** The sum as its definition has it, term by term, with the window between two samples. */
function plainSum(samples: Float32Array, from: number, length: number, cycles: number) {
  let [re, im] = [0, 0];
  for (let n = 0; n < length; n++) {
    const window = Math.sin((Math.PI * (n + 0.5)) / length) ** 2;
    const value = window * (samples[from + n] ?? Number.NaN);
    re += value * Math.cos(2 * Math.PI * cycles * n);
    im -= value * Math.sin(2 * Math.PI * cycles * n);
  }
  return { re, im };
}

describe('a sum over one frequency under a Hann window', () => {
  it('of a steady line is a quarter of its amplitude times the length, with its phase', () => {
    // The Hann window has a coherent gain of one half (F. J. Harris, Proc. IEEE 66, 51, 1978, table I), and half of a
    // real line lies at the positive frequency.
    const { re, im, size } = hannSum(line(0.8, 50 / 1000, 0.6, 1000), 0, 1000, 50 / 1000);
    expect(size).toBeCloseTo((0.8 * 1000) / 4, 4);
    expect(Math.atan2(im, re)).toBeCloseTo(0.6, 5);
  });

  it('halves one bin beside the line, and is nothing from two bins on', () => {
    // Harris 1978: the transform of a Hann window has −½, 1, −½ in three bins and zeros in all others.
    const samples = line(1, 50 / 1000, 0, 1000);
    const sizeAt = (bin: number) => hannSum(samples, 0, 1000, bin / 1000).size;
    expect(sizeAt(51)).toBeCloseTo(125, 3);
    expect(sizeAt(49)).toBeCloseTo(125, 3);
    expect(sizeAt(52)).toBeLessThan(1e-3);
    expect(sizeAt(60)).toBeLessThan(1e-3);
  });

  it('at frequency nought is half the sum of the samples that are all alike', () => {
    expect(hannSum(new Float32Array(64).fill(3), 0, 64, 0).re).toBeCloseTo(96, 9);
  });

  it('of no sample is nought, of one that sample, of two half of each', () => {
    const samples = Float32Array.of(4, 6);
    expect(hannSum(samples, 0, 0, 0.1)).toEqual({ re: 0, im: 0, size: 0 });
    // By hand: the window's middle is 1; two samples lie at a quarter and three quarters of it, where it is ½.
    expect(hannSum(samples, 1, 1, 0.1).re).toBeCloseTo(6, 12);
    expect(hannSum(samples, 0, 2, 0).re).toBeCloseTo(5, 12);
  });

  it('reads its own samples only, and is the sum of its definition, for any length', () => {
    assert(
      property(
        array(float({ min: -1, max: 1, noNaN: true }), { maxLength: 65 }),
        integer({ min: 0, max: 8 }),
        double({ min: 0, max: 0.5, noNaN: true }),
        (given, from, cycles) => {
          const length = Math.max(0, given.length - from);
          const samples = Float32Array.from(given);
          const { re, im, size } = hannSum(checked(samples), from, length, cycles);
          const plain = plainSum(samples, from, length, cycles);
          expect(re).toBeCloseTo(plain.re, 9);
          expect(im).toBeCloseTo(plain.im, 9);
          expect(size).toBeCloseTo(Math.hypot(plain.re, plain.im), 9);
        },
      ),
    );
  });
});
