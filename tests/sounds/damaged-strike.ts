// The sound of one strike on a note of a damaged pan, in its room.
import { between } from '../../src/practice-pan/seeded-random';
import type { StruckPartial } from '../../src/practice-pan/struck-note';
import { whiteNoise } from './noise';
import { addQuickNote } from './quick-struck-note';
import { type Rattle, rattleSound } from './rattle';
import { inRoom } from './room-sounds';
import { loudness, rollOff } from './scene';

/** When the note is struck, s after the first sample of its sound, and how long that is. */
export const struckAt = 0.2;
const soundSeconds = 0.96;

const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const level = (db: number): number => 10 ** (db / 20);

export interface Room {
  readonly sampleRate: number;
  readonly snrDb: number;
  readonly sympathetic: number;
  readonly ringSeconds: number;
  readonly sunCents: number;
  readonly driftCents: number;
  /** Some seconds of the room's noise, of unit deviation. */
  readonly noise: Float32Array;
}

/** The lines of a note, which stay the same from strike to strike but for phase and force. */
export interface Body {
  readonly fundamental: StruckPartial;
  readonly octave: StruckPartial;
  readonly third: StruckPartial | null;
  /** The second line of an octave that has come apart. */
  readonly second: StruckPartial | null;
  /** Lines of the pan's other notes. */
  readonly along: readonly StruckPartial[];
}

export interface Strike extends Room {
  /** How far the pan and this note have moved since the lines of its body. */
  readonly panCents: number;
  readonly ownCents: number;
  readonly rattle: Rattle | null;
  /** Energy of the stick's own noise against that of the note, dB. */
  readonly tickDb: number;
}

/** How much the force of strikes differs, dB. */
const forceDb = 4;
/** Length in which energies are compared, s. */
const energySeconds = 0.3;

export function strikeSound(
  random: () => number,
  body: Body,
  { sampleRate, snrDb, ringSeconds, noise, panCents, ownCents, rattle, tickDb }: Strike,
): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.round(soundSeconds * sampleRate));
  const force = level(between(random, -forceDb, forceDb));
  const own = [body.fundamental, body.octave, body.third, body.second].flatMap(
    (each) => each ?? [],
  );
  const partials = [...own, ...body.along].map((line, k) => ({
    ...line,
    hz: shifted(line.hz, k < own.length ? ownCents : panCents),
    glideCents: line.glideCents * between(random, 0.8, 1.2) * force,
    phase: 2 * Math.PI * random(),
    wobblePhase: 2 * Math.PI * random(),
  }));
  addQuickNote(samples, sampleRate, struckAt, { partials, onset: 0.002 }, loudness);
  const first = Math.round(struckAt * sampleRate);
  const heard = samples.subarray(first, first + Math.round(energySeconds * sampleRate));
  const energy = heard.reduce((sum, value) => sum + value * value, 0);
  const add = (sound: Float32Array): void => {
    for (let n = 0; n < sound.length && first + n < samples.length; n++) {
      samples[first + n] = (samples[first + n] ?? 0) + (sound[n] ?? 0);
    }
  };
  add(tick(random, sampleRate, ringSeconds, energy * level(2 * tickDb)));
  for (let n = first; n < samples.length; n++) samples[n] = force * (samples[n] ?? 0);
  if (rattle) add(rattleSound(random, sampleRate, rattle, force, energy));
  const deviation = Math.sqrt(energy / heard.length) * level(-snrDb);
  // A stretch of the room's noise begun anywhere: making it anew for each strike would take longer than all the rest.
  const from = Math.floor((noise.length - samples.length) * random());
  for (let n = 0; n < samples.length; n++) {
    samples[n] = (samples[n] ?? 0) + deviation * (noise[from + n] ?? 0);
  }
  rollOff(samples, sampleRate);
  return samples;
}

/** The stick's own noise, a few milliseconds long, and what the room makes of it. */
function tick(
  random: () => number,
  sampleRate: number,
  ringSeconds: number,
  energy: number,
): Float32Array<ArrayBuffer> {
  const fall = between(random, 0.001, 0.005) * sampleRate;
  const noise = whiteNoise(random, sampleRate, 0.03);
  const dry = new Float32Array(Math.round(0.5 * sampleRate));
  let power = 1e-12;
  noise.forEach((value, n) => {
    const sample = value * Math.exp(-n / fall);
    power += sample * sample;
    dry[n] = sample;
  });
  const gain = Math.sqrt(energy / power);
  return inRoom(random, dry, sampleRate, ringSeconds).map((value) => gain * value);
}
