// Ten minutes of sound at once.
import { describe, expect, it } from 'vitest';
import type { Heard } from '../../src/domain/measurement/strike';
import { strikeScene } from '../sounds/scene';
import { anyNote, everythingHeard } from './listen-to';

const sampleRate = 48000;
/** One strike with a glide, exchange and two neighbours, 30 dB above a pink noise. */
const scene = strikeScene(3, { sampleRate, snrDb: 30, sympathetic: 2, wobbleDb: 3 });

describe('no input is too odd', () => {
  const isWellFormed = (heard: Heard): boolean =>
    heard.kind !== 'strike' ||
    [heard.fundamental.hz, heard.fundamental.cents, heard.fundamental.sigmaCents, heard.at].every(
      Number.isFinite,
    );
  /** Never throws, never says NaN; that it never hangs is the test's own timeout. */
  const expectSense = (samples: Float32Array): void => {
    const heard = everythingHeard(samples, sampleRate, anyNote, samples.length);
    expect(heard.every(isWellFormed), JSON.stringify(heard)).toBe(true);
  };

  it('ten minutes of noise in one push', () => {
    const noise = scene.samples.subarray(0, 11000);
    const samples = new Float32Array(600 * sampleRate);
    for (let from = 0; from < samples.length; from += noise.length) {
      samples.set(noise.subarray(0, samples.length - from), from);
    }
    expectSense(samples);
  });

  it('ten minutes of strikes in one push', () => {
    const samples = new Float32Array(600 * sampleRate);
    const strike = scene.samples;
    for (let at = 0; at + strike.length < samples.length; at += 12 * sampleRate)
      samples.set(strike, at);
    expectSense(samples);
  });
});
