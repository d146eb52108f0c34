import { describe, expect, it } from 'vitest';
import { gaussianFrom, seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';

const sampleRate = 48000;
const plain: StruckPartial = {
  hz: 500,
  amplitude: 0.5,
  decaySeconds: 0.4,
  bloomSeconds: 0,
  glideCents: 0,
  glideSeconds: 0.05,
  phase: 0,
};

function soundOf(partial: StruckPartial, start = 0, seconds = 1): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(seconds * sampleRate);
  addStruckNote(sound, sampleRate, start, { partials: [partial], onset: 0 }, 1);
  return sound;
}

/** Largest absolute value between two times, s. */
const peakBetween = (sound: Float32Array, from: number, to: number): number =>
  sound
    .subarray(Math.round(from * sampleRate), Math.round(to * sampleRate))
    .reduce((most, value) => Math.max(most, Math.abs(value)), 0);

describe('a struck note', () => {
  it('is the damped sinusoid of its formula where nothing glides or blooms', () => {
    const sound = soundOf(plain);
    for (const n of [1, 37, 4800, 20000]) {
      const t = n / sampleRate;
      const expected = 0.5 * Math.exp(-t / 0.4) * Math.sin(2 * Math.PI * 500 * t);
      expect(sound[n]).toBeCloseTo(expected, 6);
    }
  });

  it('glides with a phase that is the sum of its momentary frequencies', () => {
    const sound = soundOf({ ...plain, glideCents: 30, wobbleHz: 5, wobbleCents: 8 });
    // Summed here in quarter-sample steps by the midpoint rule, without the closed form.
    const steps = 4;
    const up = 2 ** (30 / 1200) - 1;
    const swing = 2 ** (8 / 1200) - 1;
    let angle = 0;
    for (let n = 0; n < 24000; n++) {
      const expected = 0.5 * Math.exp(-n / sampleRate / 0.4) * Math.sin(angle);
      if (n % 997 === 0) expect(sound[n]).toBeCloseTo(expected, 5);
      for (let step = 0; step < steps; step++) {
        const t = (n + (step + 0.5) / steps) / sampleRate;
        const hz = 500 * (1 + up * Math.exp(-t / 0.05) + swing * Math.cos(2 * Math.PI * 5 * t));
        angle += (2 * Math.PI * hz) / sampleRate / steps;
      }
    }
  });

  it('holds a glide with a power at first and then lets it fall, down to its settled frequency', () => {
    const sound = soundOf({ ...plain, glideCents: 80, glidePower: 2.5 });
    const up = 2 ** (80 / 1200) - 1;
    const steps = 4;
    let angle = 0;
    for (let n = 0; n < 24000; n++) {
      const expected = 0.5 * Math.exp(-n / sampleRate / 0.4) * Math.sin(angle);
      if (n % 997 === 0) expect(sound[n]).toBeCloseTo(expected, 2);
      for (let step = 0; step < steps; step++) {
        const t = (n + (step + 0.5) / steps) / sampleRate;
        const hz = 500 * (1 + up * Math.exp(-((t / 0.05) ** 2.5)));
        angle += (2 * Math.PI * hz) / sampleRate / steps;
      }
    }
    expect(soundOf({ ...plain, glideCents: 80, glidePower: 1 })).toEqual(
      soundOf({ ...plain, glideCents: 80 }),
    );
  });

  it('reaches its amplitude at the top of the bloom, 50 to 80 ms after the strike', () => {
    const sound = soundOf({ ...plain, bloomSeconds: 0.025, decaySeconds: 0.3 });
    expect(peakBetween(sound, 0.05, 0.08)).toBeCloseTo(0.5, 2);
    expect(peakBetween(sound, 0, 0.006)).toBeLessThan(0.15);
    expect(peakBetween(sound, 0.2, 0.3)).toBeLessThan(0.35);
  });

  it('swings as deep as its energy exchange says', () => {
    const steady = soundOf(plain);
    const swinging = soundOf({ ...plain, wobbleHz: 5, wobbleDb: 10 });
    const at = (time: number) =>
      20 *
      Math.log10(
        peakBetween(swinging, time - 0.002, time + 0.002) /
          peakBetween(steady, time - 0.002, time + 0.002),
      );
    expect(at(0.2)).toBeCloseTo(0, 1);
    expect(at(0.1)).toBeCloseTo(-10, 1);
  });

  it('can start between two samples and leaves what came before as it was', () => {
    const start = 1000.5 / sampleRate;
    const sound = soundOf(plain, start);
    expect(sound.subarray(0, 1001).every((value) => value === 0)).toBe(true);
    expect(sound[1001]).toBeCloseTo(0.5 * Math.sin((2 * Math.PI * 500 * 0.5) / sampleRate), 5);
  });

  it('adds to the sound that is there', () => {
    const twice = new Float32Array(sampleRate);
    const note = { partials: [plain], onset: 0.002 };
    addStruckNote(twice, sampleRate, 0, note, 1);
    const once = Float32Array.from(twice);
    addStruckNote(twice, sampleRate, 0, note, 1);
    expect(twice[5000]).toBeCloseTo(2 * (once[5000] ?? Number.NaN), 6);
  });
});

describe('seeded randomness', () => {
  it('repeats for the same seed and differs for another', () => {
    const first = (seed: number) => Array.from({ length: 5 }, seededRandom(seed));
    expect(first(1)).toEqual(first(1));
    expect(first(1)).not.toEqual(first(2));
  });

  it('is uniform between 0 and 1, and normal where that is asked for', () => {
    const uniform = Array.from({ length: 20000 }, seededRandom(3));
    const normal = Array.from({ length: 20000 }, gaussianFrom(seededRandom(4)));
    const mean = (values: readonly number[]) =>
      values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(uniform.every((value) => value >= 0 && value < 1)).toBe(true);
    expect(Math.abs(mean(uniform) - 0.5)).toBeLessThan(0.01);
    expect(Math.abs(mean(normal))).toBeLessThan(0.03);
    expect(Math.abs(mean(normal.map((value) => value * value)) - 1)).toBeLessThan(0.05);
  });
});
