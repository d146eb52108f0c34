// Seeded blows on the pan that are not to be measured: hammer blows, choked notes, dropped sticks.
import { between } from '../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';
import { rimKnock, woodenKnock } from './knock';
import { scaledToPeak } from './noise';

const logBetween = (random: () => number, low: number, high: number): number =>
  low * (high / low) ** random();

/**
 * A hammer on the pan's steel while a hand or a rubber lies on the note: 12 to 24 bright inharmonic modes with
 * time constants of 10 to 80 ms, shorter the higher they lie, and the note's own partials weak and choked.
 */
export function hammerBlow(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const sound = rimKnock(random, sampleRate, seconds);
  const fundamental = 440 * 2 ** (between(random, -21, 19) / 12);
  const choke = between(random, 0.012, 0.045);
  const note = between(random, 0.05, 0.3);
  const own = [1, 2, 4].map((order) =>
    steady(random, order * fundamental * between(random, 0.99, 1.01), note / order, choke),
  );
  const modes = Array.from({ length: 12 + Math.floor(13 * random()) }, () => {
    const hz = logBetween(random, 350, 8000);
    const longest = Math.min(0.08, 0.08 * (900 / hz) ** 0.5);
    return steady(random, hz, between(random, 0.1, 0.5), logBetween(random, 0.01, longest));
  });
  const partials = [...own, ...modes];
  addStruckNote(sound, sampleRate, 0, { partials, onset: 0.0003 }, 0.5);
  return scaledToPeak(sound);
}

/** The first 30 to 60 ms of a struck note, choked by a hand: a fast exponential fade after it. */
export function chokedNote(
  random: () => number,
  strike: Float32Array,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const held = Math.round(between(random, 0.03, 0.06) * sampleRate);
  const fade = between(random, 0.004, 0.02) * sampleRate;
  const count = Math.round(seconds * sampleRate);
  return scaledToPeak(
    Float32Array.from({ length: count }, (_, n) => {
      const gain = n < held ? 1 : Math.exp((held - n) / fade);
      return gain * (strike[n] ?? 0);
    }),
  );
}

/** A stick that falls: two to four knocks on wood or steel, each sooner and softer than the one before. */
export function droppedStick(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  const knock = random() < 0.5 ? woodenKnock : rimKnock;
  const bounces = 2 + Math.floor(3 * random());
  const returns = between(random, 0.45, 0.75);
  let at = 0;
  let pause = between(random, 0.12, 0.32);
  let gain = 1;
  for (let bounce = 0; bounce < bounces; bounce++) {
    const first = Math.round(at * sampleRate);
    const each = knock(random, sampleRate, 0.3);
    each.forEach((value, n) => {
      if (first + n < sound.length) sound[first + n] = (sound[first + n] ?? 0) + gain * value;
    });
    at += pause;
    pause *= returns;
    gain *= returns;
  }
  return scaledToPeak(sound);
}

function steady(
  random: () => number,
  hz: number,
  amplitude: number,
  decaySeconds: number,
): StruckPartial {
  const phase = 2 * Math.PI * random();
  return { hz, amplitude, decaySeconds, bloomSeconds: 0, glideCents: 0, glideSeconds: 0, phase };
}
