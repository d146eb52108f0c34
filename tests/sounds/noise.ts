// Seeded noises a phone hears beside a pan: white, pink, and a voice.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';

/** White Gaussian noise with a standard deviation of 1. */
export function whiteNoise(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const gaussian = gaussianFrom(random);
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  for (let n = 0; n < sound.length; n++) sound[n] = gaussian();
  return sound;
}

/** Corners an octave apart, the one-pole filters of pink noise. */
function pinkPoles(
  sampleRate: number,
): readonly { readonly keep: number; readonly gain: number }[] {
  const poles: { keep: number; gain: number }[] = [];
  for (let corner = 15; corner < 0.4 * sampleRate; corner *= 2) {
    const keep = Math.exp((-2 * Math.PI * corner) / sampleRate);
    // Every stage carries the same power, so that each octave does.
    poles.push({ keep, gain: Math.sqrt(1 - keep * keep) });
  }
  return poles;
}

/** Pink noise (power falls by 3 dB an octave), about unit deviation: white noise through one-pole filters. */
export function pinkNoise(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const gaussian = gaussianFrom(random);
  const poles = pinkPoles(sampleRate);
  const keep = Float64Array.from(poles, (pole) => pole.keep);
  const gain = Float64Array.from(poles, (pole) => pole.gain);
  // Stages start settled.
  const states = Float64Array.from(poles, gaussian);
  const scale = 1 / Math.sqrt(poles.length);
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  for (let n = 0; n < sound.length; n++) {
    let sum = 0;
    for (let k = 0; k < states.length; k++) {
      const state = (keep[k] ?? 0) * (states[k] ?? 0) + (gain[k] ?? 0) * gaussian();
      states[k] = state;
      sum += state;
    }
    sound[n] = scale * sum;
  }
  return sound;
}

/** Density of `pinkNoise` at `hz`, as the variance per sample of white noise with that density. */
export function pinkDensity(hz: number, sampleRate: number): number {
  const poles = pinkPoles(sampleRate);
  const angle = (2 * Math.PI * hz) / sampleRate;
  // The stages are fed by noises of their own, so that their powers add.
  const sum = poles.reduce(
    (total, { keep, gain }) => total + gain ** 2 / (1 - 2 * keep * Math.cos(angle) + keep * keep),
    0,
  );
  return sum / poles.length;
}

interface Resonance {
  readonly first: number;
  readonly second: number;
  readonly gain: number;
  last: number;
  beforeLast: number;
}

/** A voice: glottal pulses with vibrato and jitter, three formants, a syllable envelope; peak 1. */
export function speechLikeNoise(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  const gaussian = gaussianFrom(random);
  let first = 0;
  while (first < sound.length) {
    const count = Math.round(between(random, 0.12, 0.3) * sampleRate);
    addSyllable(sound, first, count, sampleRate, random, gaussian);
    first += count + Math.round(between(random, 0.02, 0.15) * sampleRate);
  }
  return scaledToPeak(sound);
}

function addSyllable(
  sound: Float32Array,
  first: number,
  count: number,
  sampleRate: number,
  random: () => number,
  gaussian: () => number,
): void {
  const formants = [
    resonance(between(random, 300, 850), 80, sampleRate),
    resonance(between(random, 900, 2300), 110, sampleRate),
    resonance(between(random, 2400, 3200), 160, sampleRate),
  ];
  const pitch = between(random, 95, 240);
  const bend = between(random, -0.2, 0.2);
  const breath = between(random, 0.01, 0.05);
  let phase = random();
  let jitter = 0;
  for (let n = 0; n < count && first + n < sound.length; n++) {
    const place = n / count;
    const vibrato = 0.015 * Math.sin((2 * Math.PI * 5.5 * n) / sampleRate);
    phase += (pitch * (1 + bend * place + vibrato + jitter)) / sampleRate;
    let source = breath * gaussian();
    if (phase >= 1) {
      phase -= 1;
      jitter = 0.012 * gaussian();
      source += 1;
    }
    const voiced = formants.reduce((sum, formant) => sum + resonate(formant, source), 0);
    sound[first + n] = voiced * Math.sin(Math.PI * place) ** 1.5;
  }
}

function resonance(hz: number, bandwidth: number, sampleRate: number): Resonance {
  const radius = Math.exp((-Math.PI * bandwidth) / sampleRate);
  const first = 2 * radius * Math.cos((2 * Math.PI * hz) / sampleRate);
  return { first, second: -radius * radius, gain: 1 - radius, last: 0, beforeLast: 0 };
}

function resonate(formant: Resonance, input: number): number {
  const { first, second, gain, last, beforeLast } = formant;
  const output = gain * input + first * last + second * beforeLast;
  formant.beforeLast = last;
  formant.last = output;
  return output;
}

/** The same sound, made as loud as fits into −1…1; silence stays silent. */
export function scaledToPeak(sound: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer> {
  const peak = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return peak > 0 ? sound.map((value) => value / peak) : sound;
}
