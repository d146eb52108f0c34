// The sound of one struck note as a sum of decaying, blooming, gliding partials.

export interface StruckPartial {
  /** Settled frequency. */
  readonly hz: number;
  /** Linear, at its maximum. */
  readonly amplitude: number;
  /** Time in which the amplitude falls to 1/e. */
  readonly decaySeconds: number;
  /** Time constant of the rise, 0 for none. */
  readonly bloomSeconds: number;
  /** Above the settled frequency at the onset; negative glides up into it. */
  readonly glideCents: number;
  /** Time constant in which the glide dies away. */
  readonly glideSeconds: number;
  /** 1 by default: the glide dies away as exp(−(t/glideSeconds)^power). Above 1 it holds at first, then falls. */
  readonly glidePower?: number;
  /** Radians, sine convention. */
  readonly phase: number;
  /** Energy exchange: rate, depth from crest to trough, and the frequency swing that follows it. */
  readonly wobbleHz?: number;
  readonly wobbleDb?: number;
  readonly wobbleCents?: number;
  /** Radians; 0 starts at the crest. */
  readonly wobblePhase?: number;
}

export interface StruckNote {
  readonly partials: readonly StruckPartial[];
  /** Length of the linear attack ramp in seconds. */
  readonly onset: number;
}

/** A smaller amplitude is lost in 24-bit sound, and the partial ends. */
const silent = 1e-8;

/**
 * Sums `note`, struck at `startSeconds`, into `target` with `gain`.
 * The phase is the exact integral of the frequency
 * `hz·(1 + g·exp(−t/glideSeconds) + w·cos(2π·wobbleHz·t + wobblePhase))`, g and w from the cents
 * (with a `glidePower` the integral is a sum from sample to sample); the start may lie between two samples.
 */
export function addStruckNote(
  target: Float32Array,
  sampleRate: number,
  startSeconds: number,
  note: StruckNote,
  gain: number,
): void {
  for (const partial of note.partials) {
    addPartial(target, sampleRate, startSeconds, partial, note.onset, gain);
  }
}

function addPartial(
  target: Float32Array,
  sampleRate: number,
  startSeconds: number,
  partial: StruckPartial,
  onset: number,
  gain: number,
): void {
  const { hz, decaySeconds, bloomSeconds, phase } = partial;
  const glideSeconds = partial.glideSeconds > 0 ? partial.glideSeconds : 1;
  const glide = 2 ** (partial.glideCents / 1200) - 1;
  const wobbleTurn = 2 * Math.PI * (partial.wobbleHz ?? 0);
  const wobblePhase = partial.wobblePhase ?? 0;
  const wobbleNepers = ((partial.wobbleDb ?? 0) * Math.LN10) / 20;
  const wobbleShift = 2 ** ((partial.wobbleCents ?? 0) / 1200) - 1;
  const wobbles = wobbleTurn > 0 && (wobbleNepers !== 0 || wobbleShift !== 0);
  const turn = 2 * Math.PI * hz;
  const power = partial.glidePower ?? 1;
  const glideTurn = power === 1 ? turn * glide * glideSeconds : 0;
  const heldTurn = power === 1 ? 0 : (turn * glide) / sampleRate;
  // After this much of it nothing is left of the glide: exp(−16).
  const heldSeconds = heldTurn === 0 ? 0 : glideSeconds * 16 ** (1 / power);
  let held = 0;
  const shiftTurn = wobbles ? (turn * wobbleShift) / wobbleTurn : 0;
  const peak = (gain * partial.amplitude) / envelopePeak(decaySeconds, bloomSeconds);

  const first = Math.max(0, Math.ceil(startSeconds * sampleRate));
  const firstTime = first / sampleRate - startSeconds;
  let fall = Math.exp(-firstTime / decaySeconds);
  let rise = bloomSeconds > 0 ? Math.exp(-firstTime / bloomSeconds) : 0;
  let settle = Math.exp(-firstTime / glideSeconds);
  const fallStep = Math.exp(-1 / (sampleRate * decaySeconds));
  const riseStep = bloomSeconds > 0 ? Math.exp(-1 / (sampleRate * bloomSeconds)) : 0;
  const settleStep = Math.exp(-1 / (sampleRate * glideSeconds));
  // Cosine and sine of the energy exchange turn on from sample to sample.
  const wobbleSin = Math.sin(wobblePhase);
  const wobbleStepCos = Math.cos(wobbleTurn / sampleRate);
  const wobbleStepSin = Math.sin(wobbleTurn / sampleRate);
  let wobbleAcross = Math.sin(wobbleTurn * firstTime + wobblePhase);
  let wobbleAlong = Math.cos(wobbleTurn * firstTime + wobblePhase);

  for (let index = first; index < target.length; index += 1) {
    if (Math.abs(peak) * fall < silent) break;
    const time = index / sampleRate - startSeconds;
    let amplitude = peak * fall * (1 - rise);
    if (time < onset) amplitude *= time / onset;
    if (time < heldSeconds) held += heldTurn * Math.exp(-((time / glideSeconds) ** power));
    let angle = phase + turn * time + glideTurn * (1 - settle) + held;
    if (wobbles) {
      amplitude *= Math.exp((wobbleNepers * (wobbleAlong - 1)) / 2);
      angle += shiftTurn * (wobbleAcross - wobbleSin);
      const along = wobbleAlong * wobbleStepCos - wobbleAcross * wobbleStepSin;
      wobbleAcross = wobbleAcross * wobbleStepCos + wobbleAlong * wobbleStepSin;
      wobbleAlong = along;
    }
    target[index] = (target[index] ?? 0) + amplitude * Math.sin(angle);
    fall *= fallStep;
    rise *= riseStep;
    settle *= settleStep;
  }
}

/** The highest value of (1 − e^(−t/bloom))·e^(−t/decay), reached at t = bloom·ln(1 + decay/bloom). */
function envelopePeak(decaySeconds: number, bloomSeconds: number): number {
  if (bloomSeconds <= 0) return 1;
  const time = bloomSeconds * Math.log(1 + decaySeconds / bloomSeconds);
  return (1 - Math.exp(-time / bloomSeconds)) * Math.exp(-time / decaySeconds);
}
