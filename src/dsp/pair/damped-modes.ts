// The few decaying lines that a narrow band is made of, all found at once and without a first guess.

import { type Complex, smallEigenvalues } from '../numbers/small-eigenvalues';
import type { BandSignal } from '../spectrum/band-signal';
import { powerOf, project } from '../spectrum/band-sums';
import { type Subspace, signalSubspace } from './signal-subspace';

/** One decaying line of a band. */
export interface DampedMode {
  /** Offset from the band's centre, Hz. */
  readonly offsetHz: number;
  /** Decay of its amplitude, 1/s; negative where it grows. */
  readonly decayRate: number;
  /** Amplitude and phase (radians) at the first sample. */
  readonly amplitude: number;
  readonly phase: number;
  /** Its energy over the window. */
  readonly energy: number;
}

export interface DampedModes {
  /** Strongest over the window first. */
  readonly modes: readonly DampedMode[];
  /** Part of the band's energy that they leave. */
  readonly unexplained: number;
}

/**
 * `size` damped lines that together come nearest to the band (ESPRIT: Roy & Kailath,
 * IEEE Trans. Acoust. Speech Signal Process. 37(7), 984, 1989; the steps below from memory of it).
 *
 * The band is z(n) = Σ aₖ·qₖⁿ with qₖ = exp(−dₖ + iωₖ), ω radians and d nepers a sample. Every window of it is a mixture
 * of the vectors (1, qₖ, qₖ², …), so that all windows lie in a space of `size` directions, the columns of U
 * (`signalSubspace`). A window one sample later is the same mixture with each vector times its qₖ: U without its first
 * sample = (U without its last)·Φ, and the qₖ are the eigenvalues of Φ (`shiftOf`). The amplitudes aₖ then follow by
 * least squares, Gᵢⱼ = Σ conj(qᵢⁿ)·qⱼⁿ, G·a = Σ conj(qⁿ)·z(n) (`modesAt`). Coupled modes that exchange energy are such a sum; what
 * glides or wavers otherwise is only approached. `coarser`: the same with fewer lines, which costs next to nothing
 * more. Both empty if the band is too short.
 */
export function dampedModes(
  band: BandSignal,
  size: number,
  fewer: number = size,
): DampedModes & { readonly coarser: readonly DampedMode[] } {
  const length = band.count >> 1;
  if (length < size + 3) return { modes: [], unexplained: 1, coarser: [] };
  const mark = band.work.mark();
  const space = signalSubspace(band, length, size);
  const found = modesIn(band, space);
  const { re, im } = space;
  const coarser =
    fewer < size
      ? modesIn(band, { re: re.slice(0, fewer), im: im.slice(0, fewer), length }).modes
      : found.modes;
  band.work.release(mark);
  return { ...found, coarser };
}

function modesIn(band: BandSignal, space: Subspace): DampedModes {
  const found = modesAt(band, smallEigenvalues(shiftOf(space)));
  return { ...found, modes: found.modes.toSorted((a, b) => b.energy - a.energy) };
}

/** The matrix that turns the subspace without its last sample into the one without its first. */
function shiftOf({ re, im, length }: Subspace): readonly (readonly Complex[])[] {
  const size = re.length;
  /** Σ conj(a(n))·b(n + 1). */
  const product = (a: number, b: number): Complex => {
    const [aRe, aIm, bRe, bIm] = [re[a], im[a], re[b], im[b]];
    let x = 0;
    let y = 0;
    for (let n = 0; n + 1 < length; n++) {
      const p = aRe[n];
      const q = aIm[n];
      const r = bRe[n + 1];
      const s = bIm[n + 1];
      x += p * r + q * s;
      y += p * s - q * r;
    }
    return [x, y];
  };
  const raw = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, j) => product(i, j)),
  );
  // The vectors are orthonormal, so that without their last sample u their products are 1 − conj(u)·uᵀ, whose inverse
  // is 1 + conj(u)·uᵀ/(1 − |u|²) (Sherman and Morrison).
  const last = re.map((x, k): Complex => [x[length - 1], im[k][length - 1]]);
  const left = Math.max(1e-9, 1 - last.reduce((sum, [x, y]) => sum + x * x + y * y, 0));
  const row = Array.from({ length: size }, (_, j) => {
    let x = 0;
    let y = 0;
    last.forEach(([p, q], k) => {
      const [r, s] = raw[k][j];
      x += p * r - q * s;
      y += p * s + q * r;
    });
    return [x / left, y / left] as const;
  });
  return raw.map((values, i) => {
    const [p, q] = last[i];
    return values.map(([x, y], j) => {
      const [r, s] = row[j];
      return [x + p * r + q * s, y + p * s - q * r] as const;
    });
  });
}

/** Lines that turn by `turns` from sample to sample, with the amplitudes by which they come nearest to the band. */
function modesAt(band: BandSignal, turns: readonly Complex[]): DampedModes {
  const { re, im, count, rate } = band;
  const lines = turns.map(([x, y]) => ({
    decay: -Math.log(Math.max(1e-6, Math.hypot(x, y))),
    turn: Math.atan2(y, x),
  }));
  // Σ conj(a)·b of two lines is a geometric sum.
  const gram = lines.map((a) =>
    lines.map((b) => geometric(a.decay + b.decay, b.turn - a.turn, count)),
  );
  const right = lines.map(({ decay, turn }) => project(re, im, count, decay, turn) as Complex);
  const weights = solveComplex(gram, right);
  // What the best weights explain is their product with the projections.
  const explained = weights.reduce((sum, [x, y], k) => {
    const [a, b] = right[k];
    return sum + x * a + y * b;
  }, 0);
  const energy = powerOf(band) * count;
  const modes = lines.map(({ decay, turn }, k) => {
    const [x, y] = weights[k];
    return {
      offsetHz: (turn * rate) / (2 * Math.PI),
      decayRate: decay * rate,
      amplitude: Math.hypot(x, y),
      phase: Math.atan2(y, x),
      energy: (x * x + y * y) * gram[k][k][0],
    };
  });
  return { modes, unexplained: energy > 0 ? Math.max(0, 1 - explained / energy) : 1 };
}

/** Σ exp((−decay + i·turn)·n) over n = 0 … count − 1. */
function geometric(decay: number, turn: number, count: number): Complex {
  const fade = Math.exp(-decay);
  const stepRe = fade * Math.cos(turn);
  const stepIm = fade * Math.sin(turn);
  let x = 1;
  let y = 0;
  let re = 0;
  let im = 0;
  for (let n = 0; n < count; n++) {
    re += x;
    im += y;
    const next = x * stepRe - y * stepIm;
    y = x * stepIm + y * stepRe;
    x = next;
  }
  return [re, im];
}

/** Solves a small complex system by elimination with the largest pivot of each column. */
function solveComplex(
  matrix: readonly (readonly Complex[])[],
  right: readonly Complex[],
): readonly Complex[] {
  const size = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]]);
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let i = column; i < size; i++) {
      if (Math.hypot(...rows[i][column]) > Math.hypot(...rows[pivot][column])) pivot = i;
    }
    [rows[column], rows[pivot]] = [rows[pivot], rows[column]];
    const [c, d] = rows[column][column];
    const square = c * c + d * d + 1e-300;
    for (let i = 0; i < size; i++) {
      if (i === column) continue;
      const [a, b] = rows[i][column];
      const factor: Complex = [(a * c + b * d) / square, (b * c - a * d) / square];
      rows[i] = rows[i].map(([x, y], j) => {
        const [p, q] = rows[column][j];
        return [x - (factor[0] * p - factor[1] * q), y - (factor[0] * q + factor[1] * p)];
      });
    }
  }
  return rows.map((_, i) => {
    const [a, b] = rows[i][size];
    const [c, d] = rows[i][i];
    const square = c * c + d * d + 1e-300;
    return [(a * c + b * d) / square, (b * c - a * d) / square];
  });
}
