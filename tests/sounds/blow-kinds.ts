// Seeded single hammer blows: made ones, and ones cut from recorded strikes and mixed with dull thuds.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';
import { addStruckNote } from '../../src/practice-pan/struck-note';
import type { RealStrike } from '../synthetic-sounds/real-strike';
import { hammerBlow } from './blows';
import { rimKnock } from './knock';
import { scaledToPeak } from './noise';
import type { RecordedSound } from './recorded-knocks';

/** What blows are made from. */
export interface BlowBank {
  readonly strikes: readonly RealStrike[];
  readonly knocks: readonly RecordedSound[];
}

/** A blow that begins at 0, peak 1. */
type BlowMaker = (random: () => number, sampleRate: number, bank: BlowBank) => Sound;
type Sound = Float32Array<ArrayBuffer>;
type Part = readonly [sound: Float32Array, gain: number];

const seconds = 0.6;

export const blowMakers: readonly (readonly [kind: string, make: BlowMaker])[] = [
  ['made blow', (random, rate) => hammerBlow(random, rate, seconds)],
  [
    'cut strike with a thud',
    (random, rate, { strikes }) =>
      sumOf([cutStrike(random, rate, strikes), 1], [thud(random, rate), between(random, 0.3, 1.2)]),
  ],
  [
    'cut strike on steel',
    (random, rate, { strikes }) =>
      sumOf(
        [cutStrike(random, rate, strikes), 1],
        [rimKnock(random, rate, seconds), between(random, 0.3, 1.2)],
      ),
  ],
  [
    'recorded knock with a cut strike',
    (random, rate, { strikes, knocks }) =>
      sumOf(
        [recordedKnock(random, rate, knocks), 1],
        [cutStrike(random, rate, strikes), between(random, 0.2, 0.7)],
      ),
  ],
  [
    'thud with a made blow',
    (random, rate) =>
      sumOf(
        [thud(random, rate), 1],
        [hammerBlow(random, rate, seconds), between(random, 0.1, 0.5)],
      ),
  ],
];

/** The first 8 to 45 ms of a recorded strike, played up to 7 semitones lower or higher, choked by a hand or a rubber. */
function cutStrike(random: () => number, sampleRate: number, from: readonly RealStrike[]): Sound {
  const strike = pick(random, from);
  const step =
    ((strike?.sampleRate ?? sampleRate) / sampleRate) * 2 ** (between(random, -7, 7) / 12);
  const held = between(random, 0.008, 0.045) * sampleRate;
  const fade = between(random, 0.004, 0.015) * sampleRate;
  return scaledToPeak(
    resampled(strike?.samples, step, sampleRate).map(
      (value, n) => value * (n < held ? 1 : Math.exp((held - n) / fade)),
    ),
  );
}

function recordedKnock(
  random: () => number,
  sampleRate: number,
  from: readonly RecordedSound[],
): Sound {
  const knock = pick(random, from);
  const step =
    ((knock?.sampleRate ?? sampleRate) / sampleRate) * 2 ** (between(random, -5, 5) / 12);
  return scaledToPeak(resampled(knock?.samples, step, sampleRate));
}

/** A pan on its stand that is pushed: three to five modes of 70 to 350 Hz that die within 10 to 45 ms, over a soft burst. */
function thud(random: () => number, sampleRate: number): Sound {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  const gaussian = gaussianFrom(random);
  const dull = between(random, 0.003, 0.01);
  const modes = Array.from({ length: 3 + Math.floor(3 * random()) }, () => ({
    hz: between(random, 70, 350),
    amplitude: between(random, 0.3, 1),
    decaySeconds: between(random, 0.01, 0.045),
    bloomSeconds: 0,
    glideCents: 0,
    glideSeconds: 0,
    phase: 2 * Math.PI * random(),
  }));
  let low = 0;
  for (let n = 0; n < sound.length; n++) {
    // One pole at about 700 Hz: a soft hammer, or a hand on the steel.
    low += 0.1 * (gaussian() - low);
    sound[n] = low * Math.exp(-n / sampleRate / dull);
  }
  addStruckNote(sound, sampleRate, 0, { partials: modes, onset: 0.001 }, 0.5);
  return scaledToPeak(sound);
}

/** `sound` read `step` samples further each time, with straight lines between its samples. */
function resampled(sound: Float32Array | undefined, step: number, sampleRate: number): Sound {
  return Float32Array.from({ length: Math.round(seconds * sampleRate) }, (_, n) => {
    const at = n * step;
    const first = Math.floor(at);
    const [left, right] = [sound?.[first] ?? 0, sound?.[first + 1] ?? 0];
    return left + (at - first) * (right - left);
  });
}

const sumOf = (...parts: readonly Part[]): Sound =>
  scaledToPeak(
    Float32Array.from({ length: parts[0]?.[0].length ?? 0 }, (_, n) =>
      parts.reduce((sum, [sound, gain]) => sum + gain * (sound[n] ?? 0), 0),
    ),
  );

const pick = <T>(random: () => number, from: readonly T[]): T | undefined =>
  from[Math.floor(from.length * random())];
