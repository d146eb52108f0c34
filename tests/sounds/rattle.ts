// Seeded buzzes of something loose on a pan: a bead or a plate that is hit in every turn, a hanger that is hit a few times.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';

export interface Rattle {
  /** Energy of the buzz in its first 0.3 s against that of the note in the same time, dB. */
  readonly levelDb: number;
  /** Turns per second of what shakes it; null for a hanger, which is hit a few times at no fixed rate. */
  readonly hz: number | null;
  /** Time constant of the shaking, s. */
  readonly decaySeconds: number;
  /** Shaking smaller than this part of a usual strike's does not reach the loose part. */
  readonly gap: number;
  /** What the loose part rings at when it is hit. */
  readonly modes: readonly RattleMode[];
}

interface RattleMode {
  readonly hz: number;
  readonly level: number;
  readonly decaySeconds: number;
}

/** A loose part that is hit in every turn of a note at `hz`, or a hanger. */
export function rattleOf(
  random: () => number,
  kind: 'buzzing' | 'rattling',
  { hz, decaySeconds }: { readonly hz: number; readonly decaySeconds: number },
): Rattle {
  const isHanger = kind === 'rattling';
  return {
    levelDb: isHanger ? between(random, -22, -10) : between(random, -22, -5),
    hz: isHanger ? null : hz,
    decaySeconds,
    gap: between(random, 0.05, 0.35),
    modes: Array.from({ length: 4 }, () => ({
      hz: 1000 * 8 ** random(),
      level: between(random, 0.2, 1),
      decaySeconds: between(random, 0.0004, isHanger ? 0.004 : 0.002),
    })),
  };
}

/** The buzz of one strike, `force` times a usual one; its level fits a note whose energy in 0.3 s is `energy`. */
export function rattleSound(
  random: () => number,
  sampleRate: number,
  rattle: Rattle,
  force: number,
  energy: number,
): Float32Array<ArrayBuffer> {
  const shaking = (time: number): number => force * Math.exp(-time / rattle.decaySeconds);
  const sound = new Float32Array(Math.round(0.75 * sampleRate));
  const usual = new Float32Array(sound.length);
  for (const time of hits(random, rattle)) {
    addHit(sound, sampleRate, time, rattle, reach(shaking(time), rattle.gap), random);
  }
  // How loud the part is does not depend on this strike, only how hard it is hit.
  for (const time of hits(random, rattle)) {
    addHit(usual, sampleRate, time, rattle, reach(shaking(time) / force, rattle.gap), random);
  }
  const heard = usual.subarray(0, Math.round(0.3 * sampleRate));
  const power = heard.reduce((sum, value) => sum + value * value, 1e-12);
  const gain = Math.sqrt((energy * 10 ** (rattle.levelDb / 10)) / power);
  return sound.map((value) => gain * value);
}

/** How far the shaking goes over the gap. */
const reach = (shaking: number, gap: number): number => Math.max(0, shaking - gap);

function hits(random: () => number, { hz, decaySeconds, gap }: Rattle): readonly number[] {
  if (hz === null) {
    const count = 4 + Math.floor(6 * random());
    return Array.from({ length: count }, () => 0.005 + 0.28 * random());
  }
  const times: number[] = [];
  const until = Math.min(0.6, -Math.log(gap / 2) * decaySeconds);
  for (let turn = 1; turn / hz < until; turn++) {
    // Not every turn, nor at the same point of it: the part itself bounces.
    if (random() < 0.85) times.push((turn + between(random, -0.15, 0.15)) / hz);
  }
  return times;
}

function addHit(
  sound: Float32Array,
  sampleRate: number,
  time: number,
  { modes }: Rattle,
  force: number,
  random: () => number,
): void {
  if (force <= 0) return;
  const gaussian = gaussianFrom(random);
  const hit = force * between(random, 0.5, 1.5);
  const first = Math.round(time * sampleRate);
  for (const mode of modes) {
    const level = hit * mode.level * (1 + 0.3 * gaussian());
    const turn = (2 * Math.PI * mode.hz) / sampleRate;
    const phase = 2 * Math.PI * random();
    const last = Math.min(sound.length, first + Math.round(6 * mode.decaySeconds * sampleRate));
    for (let n = first; n < last; n++) {
      const fall = Math.exp(-(n - first) / (mode.decaySeconds * sampleRate));
      sound[n] = (sound[n] ?? 0) + level * fall * Math.sin(phase + turn * (n - first));
    }
  }
}
