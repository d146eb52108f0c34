// A struck note with a second line beside one of its partials, or with single lines that exchange energy; made without
// anything of the other scenes, so that what was set on those does not flatter itself here.
import { between, gaussianFrom, seededRandom } from '../../src/practice-pan/seeded-random';

export type DoublePartial = 'fundamental' | 'octave' | 'third';

export interface TwoLineTruth {
  /** MIDI note. */
  readonly note: number;
  /** When it is struck, s. */
  readonly at: number;
  readonly fundamental: number;
  readonly octave: number;
  readonly third: number;
  /** The partial beside which a second line rings, and where, Hz; null for single lines. */
  readonly double: DoublePartial | null;
  readonly rivalHz: number | null;
}

export interface TwoLineNote {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  readonly truth: TwoLineTruth;
}

interface Line {
  readonly hz: number;
  readonly amplitude: number;
  /** Time constants of decay and rise, s. */
  readonly decay: number;
  readonly rise: number;
  /** Glide at the strike, cents. */
  readonly glide: number;
  /** Energy exchange: rate (Hz), depth (nepers, from mean to crest) and the swing of the frequency with it (cents). */
  readonly exchange: readonly [rate: number, depth: number, swing: number];
}

const at = 0.25;
const seconds = 1.2;
const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const level = (db: number): number => 10 ** (db / 20);

/**
 * The note of `seed`, C4 to A#5. Beside `double` a second line, as loud or up to 12 dB softer: 2 to 9 Hz away at the
 * fundamental and the third, 9 to 18 cents at the octave. Time constants 0.13 to 0.3 s, glides of up to 20 cents in
 * 20 to 45 ms, rises of 2 to 40 ms, four other notes at −25 to −45 dB, white noise 30 dB below the strike's loudest.
 * With `double` null every partial is one line that exchanges up to 10 dB of energy 3 to 15 times a second.
 */
export function twoLineNote(seed: number, double: DoublePartial | null): TwoLineNote {
  const random = seededRandom(seed * 7919 + 17);
  const sampleRate = random() < 0.5 ? 44100 : 48000;
  const note = 60 + Math.floor(23 * random());
  const glideSeconds = between(random, 0.02, 0.045);
  const glideCents = between(random, -5, 20);
  const fundamental = shifted(440 * 2 ** ((note - 69) / 12), between(random, -20, 20));
  const octave = shifted(2 * fundamental, between(random, -12, 12));
  const third = shifted(4 * fundamental, between(random, -15, 15));
  const line = (hz: number, db: number, glideShare: number): Line => ({
    hz,
    amplitude: level(db),
    decay: between(random, 0.13, 0.3),
    rise: between(random, 0.002, 0.04),
    glide: glideShare * glideCents,
    exchange:
      double === null
        ? [
            between(random, 3, 15),
            (between(random, 2, 10) * Math.LN10) / 40,
            between(random, 0, 0.3),
          ]
        : [0, 0, 0],
  });
  const partials = {
    fundamental: line(fundamental, 0, 1),
    octave: line(octave, between(random, -12, 6), 0.6),
    third: line(third, between(random, -24, -6), 0.4),
  };
  const lines = [partials.fundamental, partials.octave, partials.third];
  let rivalHz: number | null = null;
  if (double !== null) {
    const own = partials[double];
    const side = random() < 0.5 ? -1 : 1;
    rivalHz =
      double === 'octave'
        ? shifted(own.hz, side * between(random, 9, 18))
        : own.hz + side * between(random, 2, 9);
    const rival = line(rivalHz, between(random, -12, 0), 0);
    lines.push({ ...rival, amplitude: own.amplitude * rival.amplitude });
  }
  for (let k = 0; k < 4; k++) {
    // Between the partials' semitones and at least one away from each.
    const steps = [2, 3, 4, 5, 6, 7, 8, 9, 10, 14, 15, 17][Math.floor(12 * random())] ?? 3;
    lines.push(line(shifted(fundamental, 100 * steps), between(random, -45, -25), 0));
  }
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (const each of lines) addLine(samples, sampleRate, each, glideSeconds, random);
  addNoise(samples, 30, random);
  return { samples, sampleRate, truth: { note, at, fundamental, octave, third, double, rivalHz } };
}

function addLine(
  samples: Float32Array,
  sampleRate: number,
  { hz, amplitude, decay, rise, glide, exchange: [rate, depth, swing] }: Line,
  glideSeconds: number,
  random: () => number,
): void {
  const turn = 2 * Math.PI * hz;
  const start = 2 * Math.PI * random();
  const exchangeStart = 2 * Math.PI * random();
  const slow = 2 * Math.PI * rate;
  const glideTurns = (2 ** (glide / 1200) - 1) * turn * glideSeconds;
  const swingTurns = rate > 0 ? ((2 ** (swing / 1200) - 1) * turn) / slow : 0;
  for (let n = Math.round(at * sampleRate); n < samples.length; n++) {
    const t = n / sampleRate - at;
    const size =
      0.2 *
      amplitude *
      (1 - Math.exp(-t / rise)) *
      Math.exp(-t / decay + depth * Math.cos(slow * t + exchangeStart));
    const angle =
      start +
      turn * t -
      glideTurns * Math.exp(-t / glideSeconds) +
      swingTurns * Math.sin(slow * t + exchangeStart);
    samples[n] = (samples[n] ?? 0) + size * Math.cos(angle);
  }
}

function addNoise(samples: Float32Array, db: number, random: () => number): void {
  const gaussian = gaussianFrom(random);
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  const deviation = peak * level(-db);
  for (let n = 0; n < samples.length; n++) {
    samples[n] = (samples[n] ?? 0) + deviation * gaussian();
  }
}
