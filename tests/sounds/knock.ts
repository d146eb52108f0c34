// Seeded blows that are no notes: wood, hands, a hammer on the rim. Each starts at 0 and peaks at 1.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';
import { scaledToPeak } from './noise';

/** A knock on wood: a burst of noise and two or three modes of 300–1500 Hz that die within 5–15 ms. */
export function woodenKnock(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const modes = random() < 0.5 ? 2 : 3;
  return blow(random, sampleRate, seconds, {
    burst: 0.6,
    burstSeconds: between(random, 0.002, 0.006),
    modes: Array.from({ length: modes }, () => ({
      hz: between(random, 300, 1500),
      amplitude: between(random, 0.3, 1),
      decaySeconds: between(random, 0.005, 0.015),
    })),
  });
}

/** A clap: three or four bursts of noise some 10 ms apart, the last one longest. */
export function clap(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  const bursts = random() < 0.5 ? 3 : 4;
  let start = 0;
  for (let burst = 1; burst <= bursts; burst++) {
    const decay = burst === bursts ? between(random, 0.015, 0.03) : 0.003;
    addBurst(sound, sampleRate, start, between(random, 0.6, 1), decay, random);
    start += between(random, 0.006, 0.014);
  }
  return scaledToPeak(sound);
}

/** A hammer on the steel rim: bright inharmonic modes, many and short, over a hard click. */
export function rimKnock(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  return blow(random, sampleRate, seconds, {
    burst: 1,
    burstSeconds: between(random, 0.001, 0.003),
    modes: Array.from({ length: 9 }, () => ({
      hz: between(random, 700, 7500),
      amplitude: between(random, 0.15, 0.6),
      decaySeconds: between(random, 0.008, 0.035),
    })),
  });
}

interface Blow {
  readonly burst: number;
  readonly burstSeconds: number;
  readonly modes: readonly Pick<StruckPartial, 'hz' | 'amplitude' | 'decaySeconds'>[];
}

function blow(
  random: () => number,
  sampleRate: number,
  seconds: number,
  { burst, burstSeconds, modes }: Blow,
): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  addBurst(sound, sampleRate, 0, burst, burstSeconds, random);
  const partials = modes.map((mode) => ({
    ...mode,
    bloomSeconds: 0,
    glideCents: 0,
    glideSeconds: 0,
    phase: 2 * Math.PI * random(),
  }));
  addStruckNote(sound, sampleRate, 0, { partials, onset: 0.0005 }, 1);
  return scaledToPeak(sound);
}

function addBurst(
  sound: Float32Array,
  sampleRate: number,
  start: number,
  amplitude: number,
  decaySeconds: number,
  random: () => number,
): void {
  const gaussian = gaussianFrom(random);
  for (let n = Math.round(start * sampleRate); n < sound.length; n++) {
    const level = 0.4 * amplitude * Math.exp(-(n / sampleRate - start) / decaySeconds);
    if (level < 1e-7) return;
    sound[n] = (sound[n] ?? 0) + level * gaussian();
  }
}
