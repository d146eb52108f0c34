// Seeded sounds of a yard and a workshop: wind over the microphone, mains hum, an echoing room.
import { between } from '../../src/practice-pan/seeded-random';
import { pinkNoise, scaledToPeak, whiteNoise } from './noise';

/** Wind over a microphone: pink and deep noise in gusts of 0.1 to 1 s; peak 1. */
export function windNoise(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const rumble = whiteNoise(random, sampleRate, seconds);
  const keep = Math.exp((-2 * Math.PI * between(random, 60, 300)) / sampleRate);
  const hiss = pinkNoise(random, sampleRate, seconds);
  let deep = 0;
  let gust = 0;
  let target = random();
  let left = 0;
  const sound = rumble.map((value, n) => {
    if (left-- <= 0) {
      target = random() ** 3;
      left = between(random, 0.1, 1) * sampleRate;
    }
    gust += (target - gust) * (12 / sampleRate);
    deep = keep * deep + (1 - keep) * value;
    return gust * (12 * deep + 0.08 * (hiss[n] ?? 0));
  });
  return scaledToPeak(sound);
}

/** Mains hum that is switched on with a click after `onSeconds`: 50 or 60 Hz and its harmonics; peak 1. */
export function mainsHum(
  random: () => number,
  sampleRate: number,
  seconds: number,
  onSeconds: number,
): Float32Array<ArrayBuffer> {
  const hz = (random() < 0.5 ? 50 : 60) * between(random, 0.999, 1.001);
  const orders = [1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16];
  const levels = orders.map((order) => (random() * (order % 2 === 0 ? 1 : 0.5)) / order ** 0.5);
  const phases = orders.map(() => 2 * Math.PI * random());
  const rise = between(random, 0.001, 0.03);
  const settles = between(random, 0, 1.5);
  const noise = whiteNoise(random, sampleRate, 0.02);
  const first = Math.round(onSeconds * sampleRate);
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  for (let n = first; n < sound.length; n++) {
    const time = (n - first) / sampleRate;
    // A transformer's inrush: louder at first.
    const gain = (1 - Math.exp(-time / rise)) * (1 + settles * Math.exp(-time / 0.1));
    let sum = 0.3 * (noise[n - first] ?? 0) * Math.exp(-time / 0.003);
    orders.forEach((order, k) => {
      sum += gain * (levels[k] ?? 0) * Math.sin(2 * Math.PI * order * hz * time + (phases[k] ?? 0));
    });
    sound[n] = sum;
  }
  return scaledToPeak(sound);
}

/** The same sound with 60 seeded echoes of a room whose sound falls by 60 dB in `ringSeconds`. */
export function inRoom(
  random: () => number,
  sound: Float32Array,
  sampleRate: number,
  ringSeconds: number,
): Float32Array<ArrayBuffer> {
  const echoed = new Float32Array(sound);
  for (let echo = 0; echo < 60; echo++) {
    const delay = 0.003 + 0.6 * ringSeconds * random() ** 1.5;
    const gain = 0.18 * (random() < 0.5 ? -1 : 1) * 10 ** ((-3 * delay) / ringSeconds);
    const first = Math.round(delay * sampleRate);
    for (let n = first; n < echoed.length; n++) {
      echoed[n] = (echoed[n] ?? 0) + gain * (sound[n - first] ?? 0);
    }
  }
  return echoed;
}
