// Where a search for two lines close together may begin: the pairs of plain decaying lines that explain most.
import type { BandSignal } from '../spectrum/band-signal';
import { project } from '../spectrum/band-sums';
import type { WaveringSeed } from './wavering-model';

/** Grid, as a part of 1/window. */
const gridStep = 0.3;
const starts = 3;

/** Up to three pairs within ±`reachHz` of `seedHz` (offsets from the band's centre), at least `apartHz` apart. */
export function pairStarts(
  band: BandSignal,
  seedHz: number,
  reachHz: number,
  apartHz: number,
): readonly (readonly [WaveringSeed, WaveringSeed])[] {
  const { count, rate, work } = band;
  const decay = decayOf(band) / rate;
  const half = Math.ceil((reachHz * count) / rate / gridStep);
  const step = (gridStep * rate) / count;
  const size = 2 * half + 1;
  // Projections of the band on each line of the grid.
  const re = work.take(size);
  const im = work.take(size);
  for (let g = 0; g < size; g++) {
    const turn = (2 * Math.PI * (seedHz + (g - half) * step)) / rate;
    [re[g], im[g]] = project(band.re, band.im, count, decay, turn);
  }
  const ones = work.take(count).fill(1, 0, count);
  const zeros = work.zeros(count);
  const gram = Array.from({ length: size }, (_, d) =>
    project(ones, zeros, count, 2 * decay, (2 * Math.PI * d * step) / rate),
  );
  const energy = gram[0]?.[0] ?? 1;
  const nearest = Math.max(2, Math.ceil(apartHz / step));
  const furthest = Math.min(size - 1, half);
  const gains = work.zeros(size * size);
  const solve = (a: number, b: number): [number, number, number, number, number] => {
    // Least squares for weights u (line a) and v (line b); gram(a,b) = Σ conj(a)·b.
    const [c, s] = gram[b - a] ?? [0, 0];
    const [xr, xi, yr, yi] = [re[a] ?? 0, im[a] ?? 0, re[b] ?? 0, im[b] ?? 0];
    const determinant = energy * energy - c * c - s * s;
    // project() gives Σ e^{−iωn}, the conjugate of Σ conj(a)·b.
    const ur = (energy * xr - (c * yr + s * yi)) / determinant;
    const ui = (energy * xi - (c * yi - s * yr)) / determinant;
    const vr = (energy * yr - (c * xr - s * xi)) / determinant;
    const vi = (energy * yi - (c * xi + s * xr)) / determinant;
    return [ur, ui, vr, vi, ur * xr + ui * xi + vr * yr + vi * yi];
  };
  for (let a = 0; a < size; a++) {
    for (let b = a + nearest; b <= Math.min(size - 1, a + furthest); b++) {
      // One of the two is the line that was seen.
      if (Math.min(Math.abs(a - half), Math.abs(b - half)) * step > Math.max(4, 0.25 * reachHz))
        continue;
      gains[a * size + b] = solve(a, b)[4];
    }
  }
  const at = (a: number, b: number): number =>
    a < 0 || b < 0 || a >= size || b >= size ? 0 : (gains[a * size + b] ?? 0);
  const peaks: { a: number; b: number; gain: number }[] = [];
  for (let a = 0; a < size; a++) {
    for (let b = a + nearest; b < size; b++) {
      const gain = at(a, b);
      if (!(gain > 0)) continue;
      let top = true;
      for (let i = -1; i <= 1; i++)
        for (let j = -1; j <= 1; j++) if (at(a + i, b + j) > gain) top = false;
      if (top) peaks.push({ a, b, gain });
    }
  }
  peaks.sort((one, other) => other.gain - one.gain);
  return peaks.slice(0, starts).map(({ a, b }) => {
    const [ur, ui, vr, vi] = solve(a, b);
    const seed = (g: number, x: number, y: number): WaveringSeed => ({
      offsetHz: seedHz + (g - half) * step,
      decayRate: decay * rate,
      amplitude: Math.hypot(x, y),
      phase: Math.atan2(y, x),
    });
    return [seed(a, ur, ui), seed(b, vr, vi)] as const;
  });
}

/** Amplitude decay rate from the energies of the window's halves, 1/s. */
function decayOf({ re, im, count, rate }: BandSignal): number {
  const half = count >> 1;
  let [first, second] = [0, 0];
  for (let n = 0; n < half; n++) {
    first += (re[n] ?? 0) ** 2 + (im[n] ?? 0) ** 2;
    second += (re[n + half] ?? 0) ** 2 + (im[n + half] ?? 0) ** 2;
  }
  const perSecond = Math.log(Math.max(1.05, first / Math.max(second, 1e-300))) / (half / rate) / 2;
  return Math.min(30, perSecond);
}
