// What sounds at a stroke besides the note: the stick's noise, the thump of the shell, its many short high modes.
import { between, gaussianFrom } from './seeded-random';

/** Noise that dies away with the time constant `seconds`, deviation `level` at first. */
export interface Burst {
  readonly level: number;
  readonly seconds: number;
  /** Frequencies above this are weakened, first order, Hz. */
  readonly brightHz: number;
}

export function addBurst(
  target: Float32Array,
  sampleRate: number,
  startSeconds: number,
  { level, seconds, brightHz }: Burst,
  random: () => number,
): void {
  const gaussian = gaussianFrom(random);
  const keep = Math.exp((-2 * Math.PI * brightHz) / sampleRate);
  // The filter's output has the deviation that is asked for.
  const gain = Math.sqrt(1 - keep * keep) * level;
  const first = Math.max(0, Math.ceil(startSeconds * sampleRate));
  const last = Math.min(target.length, first + Math.ceil(9 * seconds * sampleRate));
  const fallStep = Math.exp(-1 / (sampleRate * seconds));
  let fall = 1;
  let smooth = 0;
  for (let n = first; n < last; n++) {
    smooth = keep * smooth + gain * gaussian();
    target[n] = (target[n] ?? 0) + fall * smooth;
    fall *= fallStep;
  }
}

/** Modes in no harmonic order between two frequencies. */
export interface ModeBand {
  readonly count: number;
  readonly lowHz: number;
  readonly highHz: number;
  /** Shortest and longest time constant, s. */
  readonly decaySeconds: readonly [shortest: number, longest: number];
  /** Slowest rise, s: the metal passes the blow on. */
  readonly bloomSeconds: number;
}

export interface Mode {
  readonly hz: number;
  readonly amplitude: number;
  readonly decaySeconds: number;
  readonly bloomSeconds: number;
  readonly phase: number;
}

/** The modes of a band; the squares of their amplitudes add up to 1. */
export function modesOf(random: () => number, band: ModeBand): readonly Mode[] {
  const { count, lowHz, highHz, decaySeconds, bloomSeconds } = band;
  const gaussian = gaussianFrom(random);
  const drawn = Array.from({ length: count }, () => ({
    hz: lowHz * (highHz / lowHz) ** random(),
    // Two normal numbers for the two parts of a complex amplitude.
    amplitude: Math.hypot(gaussian(), gaussian()),
    decaySeconds: decaySeconds[0] * (decaySeconds[1] / decaySeconds[0]) ** random(),
    bloomSeconds: between(random, 0.0005, bloomSeconds),
    phase: 2 * Math.PI * random(),
  }));
  const all = Math.sqrt(drawn.reduce((sum, { amplitude }) => sum + amplitude ** 2, 0));
  return drawn.map((mode) => ({ ...mode, amplitude: mode.amplitude / Math.max(all, 1e-9) }));
}

/** Adds `modes` from `startSeconds` on: each gain·amplitude·(1 − exp(−t/bloom))·exp(−t/decay)·sin(2π·hz·t + phase). */
export function addModes(
  target: Float32Array,
  sampleRate: number,
  startSeconds: number,
  modes: readonly Mode[],
  gain: number,
): void {
  const first = Math.max(0, Math.ceil(startSeconds * sampleRate));
  for (const { hz, amplitude, decaySeconds, bloomSeconds, phase } of modes) {
    const last = Math.min(target.length, first + Math.ceil(fadedAfter * decaySeconds * sampleRate));
    const part = target.subarray(first, last);
    const turn = (2 * Math.PI * hz) / sampleRate;
    const fall = 1 / (sampleRate * decaySeconds);
    addDamped(part, gain * amplitude, turn, phase, fall);
    addDamped(part, -gain * amplitude, turn, phase, fall + 1 / (sampleRate * bloomSeconds));
  }
}

/** After so many time constants a mode is 78 dB down. */
const fadedAfter = 9;

/** amplitude·exp(−fall·n)·sin(turn·n + phase), each value from the two before it. */
function addDamped(
  part: Float32Array,
  amplitude: number,
  turn: number,
  phase: number,
  fall: number,
): void {
  const radius = Math.exp(-fall);
  const keep = 2 * radius * Math.cos(turn);
  const lose = radius * radius;
  let before = (amplitude / radius) * Math.sin(phase - turn);
  let beforeThat = (amplitude / lose) * Math.sin(phase - 2 * turn);
  for (let n = 0; n < part.length; n++) {
    const value = keep * before - lose * beforeThat;
    part[n] = (part[n] ?? 0) + value;
    beforeThat = before;
    before = value;
  }
}
