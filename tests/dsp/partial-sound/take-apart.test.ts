// A partial by itself is the partial: planted truth, and real recorded strikes.
import { describe, expect, it } from 'vitest';
import { centsBetween, seconds } from '../../../src/domain/tuning/units';
import { weightAt } from '../../../src/dsp/partial-sound/equal-loudness';
import { followLine } from '../../../src/dsp/partial-sound/follow-line';
import { filterFor, trackLine, trackStep } from '../../../src/dsp/partial-sound/line-track';
import { soundOfTrack } from '../../../src/dsp/partial-sound/sound-of-track';
import { takeApart } from '../../../src/dsp/partial-sound/take-apart';
import { plainSpectrum, realStrikes, strongestLine } from '../../synthetic-sounds/real-strike';
import { placed } from '../../synthetic-sounds/sounds';
import { onlyStrike } from '../listen-to';
import { plantedStrike, rate, struckAt } from './planted-parts';

const notes = [130.8, 196, 261.6, 330, 440, 587.3, 784, 987.8];
const strikes = notes.map((hz, k) => ({ own: hz, ...plantedStrike(k + 1, hz) }));
const onset = Math.round(struckAt * rate);
const decibel = (ratio: number): number => 20 * Math.log10(ratio);
const energy = (samples: ArrayLike<number>, from: number, to: number): number => {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return sum;
};
/** The promise begins 30 ms after the strike. */
const promised = 0.03;
/** 35 dB below the partial's own loudest. */
const audible = 10 ** (-35 / 20);

describe.each(strikes)('a strike of $own Hz', ({ strike, sound, partials, alone, rest, own }) => {
  const lines = [strike.fundamental, strike.octave, strike.third];
  const tracks = lines.map((line, k) =>
    followLine(sound, rate, onset, line?.hz ?? 0, 0.9, own, k === 0 ? own * 0.25 : Infinity),
  );

  it('loses at least 40 dB of everything else when one partial is taken out', () => {
    tracks.forEach((track, k) => {
      const filter = filterFor(own, k === 0 ? own * 0.25 : Infinity);
      // The filter is linear: what it does to all the rest along this course is what is left of it.
      const left = soundOfTrack(
        trackLine(rest[k] ?? sound, rate, onset, track.hz, track.turns, filter),
        rate,
      );
      const from = Math.round(Math.max(promised, filter.longHalf) * rate);
      const to = Math.round(0.6 * rate);
      const removed = decibel(
        Math.sqrt(energy(rest[k] ?? [], onset + from, onset + to) / energy(left, from, to)),
      );
      expect(removed, `part ${k}: ${removed.toFixed(1)} dB`).toBeGreaterThan(40);
    });
  });

  it('keeps its envelope within 1 dB from 30 ms on', () => {
    tracks.forEach((track, k) => {
      const still = partials[k];
      if (!still) throw new Error('no such part');
      let worst = 0;
      for (let at = promised; at < 0.4; at += 0.005) {
        const point = Math.round(at / trackStep);
        const found = Math.hypot(track.re[point] ?? 0, track.im[point] ?? 0);
        const truth = envelopeOf(alone[k] ?? sound, onset + Math.round(at * rate), still.hz);
        // What has faded that far is as faint as the planted noise itself.
        if (truth > audible * still.amplitude)
          worst = Math.max(worst, Math.abs(decibel(found / truth)));
      }
      expect(worst, `part ${k}: ${worst.toFixed(2)} dB`).toBeLessThan(1);
    });
  });

  it('keeps the frequency that was measured within 0.2 cent', () => {
    tracks.forEach((track, k) => {
      const made = soundOfTrack(track, rate);
      const window = lines[k]?.window;
      const to = Math.min(window?.to ?? 0.5, 0.5);
      const between = { from: 0.2, to };
      const near = { low: track.hz * 0.99, high: track.hz * 1.01 };
      const found = strongestLine(made, rate, { ...between, ...near });
      const truth = strongestLine(alone[k]?.slice(onset) ?? made, rate, { ...between, ...near });
      const away = Math.abs(centsBetween(truth, found));
      expect(away, `part ${k}: ${away.toFixed(3)} cents`).toBeLessThan(0.2);
    });
  });
});

/** Amplitude of the one line in `samples` around sample `at`: a fit of sine and cosine over two turns. */
function envelopeOf(samples: Float32Array, at: number, hz: number): number {
  const half = Math.round((2 * rate) / hz);
  let [cc, ss, cs, xc, xs] = [0, 0, 0, 0, 0];
  for (let n = -half; n <= half; n++) {
    const angle = (2 * Math.PI * hz * n) / rate;
    const [c, s, x] = [Math.cos(angle), Math.sin(angle), samples[at + n] ?? 0];
    cc += c * c;
    ss += s * s;
    cs += c * s;
    xc += x * c;
    xs += x * s;
  }
  const full = cc * ss - cs * cs;
  return Math.hypot((xc * ss - xs * cs) / full, (xs * cc - xc * cs) / full);
}

describe('what is played', () => {
  const planted = plantedStrike(3, 261.6);
  const inside = takeApart(
    planted.strike,
    { samples: planted.sound, sampleRate: rate },
    seconds(struckAt),
  );

  it('beats as often as is stated when partial and target sound together', () => {
    for (const { name, beatHz, targetHz, measured } of inside.parts) {
      for (const slower of [1, 2, 4] as const) {
        const of = (which: 'alone' | 'target'): number =>
          plainSpectrum(inside.soundOf(name, which, slower).samples, rate, {
            from: 0.15 * slower,
            to: 0.55 * slower,
          })(targetHz * 0.985, targetHz * 1.015);
        const beats = Math.abs(of('alone') - of('target'));
        // Of the settled part; a plain spectrum weighs the rest of the glide with it.
        expect(Math.abs(beats - beatHz), `${name} ${slower} ${beats} ${beatHz}`).toBeLessThan(
          0.0004 * measured.hz,
        );
      }
    }
  });

  it('is the sum of the two, and lasts as much longer as it is slowed', () => {
    for (const slower of [1, 2, 4] as const) {
      const [alone, target, both] = (['alone', 'target', 'both'] as const).map(
        (which) => inside.soundOf('octave', which, slower).samples,
      );
      expect(both?.length).toBe(alone?.length);
      expect((both?.length ?? 0) / rate).toBeCloseTo(slower * inside.seconds, 1);
      const top = [10000, 20000].map(
        (n) => (both?.[n] ?? 0) / ((alone?.[n] ?? 0) + (target?.[n] ?? 0)),
      );
      expect(top[0]).toBeCloseTo(top[1] ?? 0, 3);
    }
  });

  it('is equally loud, part by part, after the weighting of BS.1770', () => {
    const levels = inside.parts.flatMap(({ name, measured }) =>
      (['alone', 'target'] as const).map((which) => {
        const { samples } = inside.soundOf(name, which, 1);
        return decibel(
          Math.sqrt(energy(samples, 0, samples.length) / samples.length) * weightAt(measured.hz),
        );
      }),
    );
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1);
    // ITU-R BS.1770-4: at 997 Hz the weighting is 0.691 dB, the constant of its loudness formula.
    expect(decibel(weightAt(997))).toBeCloseTo(0.691, 2);
  });

  it('has the values of the reading: the mean of the course over the measured window', () => {
    for (const { name, cents, course, measured } of inside.parts) {
      const within = course.filter(
        ({ at }) => at >= (measured.window?.from ?? 0) && at <= (measured.window?.to ?? 0),
      );
      const weights = within.map(({ levelDb }) => 10 ** (levelDb / 10));
      const mean =
        within.reduce((sum, each, n) => sum + each.cents * (weights[n] ?? 0), 0) /
        weights.reduce((sum, each) => sum + each, 0);
      expect(Math.abs(mean - cents), `${name} ${mean} ${cents}`).toBeLessThan(0.3);
    }
  });
});

describe('a recorded strike of the bank', async () => {
  const recorded = (await realStrikes()).filter(
    ({ samples, sampleRate }) => samples.length / sampleRate > 0.4,
  );
  it.each(recorded)(
    '$name has each partial where it was measured, and hardly anything else',
    ({ samples, sampleRate }) => {
      const whole = placed([{ at: struckAt, samples }], { sampleRate, seconds: 1 });
      const padded = placed([{ at: 0.3, samples }], { sampleRate, seconds: 1.6 });
      const strike = onlyStrike(padded, sampleRate);
      const inside = takeApart(
        strike,
        { samples: Float32Array.from(whole), sampleRate },
        seconds(struckAt),
      );
      expect(inside.parts.length).toBeGreaterThan(1);
      for (const { name, measured, rival } of inside.parts) {
        const { samples: alone } = inside.soundOf(name, 'alone', 1);
        const window = { from: 0.1, to: 0.38 };
        const near = { low: measured.hz * 0.985, high: measured.hz * 1.015 };
        const found = strongestLine(alone, sampleRate, { ...window, ...near });
        const there = strongestLine(whole.slice(Math.round(struckAt * sampleRate)), sampleRate, {
          ...window,
          ...near,
        });
        const away = Math.abs(centsBetween(there, found));
        // Two lines pull each other's peak in a plain spectrum.
        expect(away, `${name} ${away.toFixed(2)}`).toBeLessThan(rival ? 0.5 : 0.2);
      }
    },
  );
});
