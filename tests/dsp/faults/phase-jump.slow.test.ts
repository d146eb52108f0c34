// Samples that were lost without leaving zeros.
import { describe, expect, it } from 'vitest';
import { hasClick } from '../../../src/dsp/faults/click';
import { phaseJumps } from '../../../src/dsp/faults/phase-jump';
import { leadSeconds, StrikeSpectrum } from '../../../src/dsp/spectrum/strike-spectrum';
import { strikeScene } from '../../sounds/scene';
import { leadNote, placed } from '../../synthetic-sounds/sounds';
import { finallyHeard } from '../listen-to';

const sampleRate = 44100;
/** One device buffer of 10 ms. */
const lost = 441;

/** The sound without `lost` samples from `at` seconds on. */
function cut(samples: Float32Array, at: number): Float32Array {
  const first = Math.round(at * sampleRate);
  const rest = new Float32Array(samples.length - lost);
  rest.set(samples.subarray(0, first));
  rest.set(samples.subarray(first + lost), first);
  return rest;
}

const flatNote = (): Float32Array =>
  placed(
    [
      {
        at: 0.5,
        samples: leadNote(
          { target: 740, fundamental: -7, octave: 0, third: 2, thirdTimes: 4 },
          sampleRate,
        ),
      },
    ],
    { sampleRate, seconds: 2 },
  );

describe('a strike from which the phone dropped ten milliseconds without a trace', () => {
  it.each([0.15, 0.2, 0.25, 0.3, 0.35, 0.4])(
    'is refused, or measured before the place, when they are missing %s s after it',
    (after) => {
      const heard = finallyHeard(cut(flatNote(), 0.5 + after), sampleRate);
      for (const each of heard) {
        if (each.kind === 'strike') expect(Math.abs(each.fundamental.cents + 7)).toBeLessThan(0.5);
      }
      expect(heard.some((each) => each.kind === 'refused' || each.kind === 'strike')).toBe(true);
    },
  );

  it('is refused by the phases of its lines and the click of the seam', () => {
    const refusals = [0.15, 0.2, 0.25, 0.3].map((after) => {
      const spectrum = new StrikeSpectrum(sampleRate);
      const first = Math.round((0.5 - leadSeconds) * sampleRate);
      const count = Math.round((leadSeconds + 0.6) * sampleRate);
      const segment = cut(flatNote(), 0.5 + after).slice(first, first + count);
      const onset = Math.round(leadSeconds * sampleRate);
      const lines = spectrum.lines(segment, onset + 2646, onset + 14112, 14);
      spectrum.load(segment, count);
      const jumps = phaseJumps(spectrum, lines, 0.588);
      return jumps.some((time) =>
        hasClick(segment, Math.round((leadSeconds + time) * sampleRate), sampleRate),
      );
    });
    expect(refusals).toEqual([true, true, true, true]);
  });

  it('is measured when nothing is missing', () => {
    expect(finallyHeard(flatNote(), sampleRate)).toMatchObject([{ kind: 'strike', note: 78 }]);
  });

  it('is not suspected in scenes with glide, energy exchange, neighbours and octave pairs', () => {
    for (let seed = 401; seed <= 420; seed++) {
      for (const pair of [false, true]) {
        const { samples, sampleRate: rate } = strikeScene(seed, { pair });
        const reasons = finallyHeard(samples, rate).map((heard) =>
          heard.kind === 'refused' ? heard.reason : heard.kind,
        );
        expect(reasons, `seed ${seed}`).not.toContain('lost-audio');
      }
    }
  });
});
