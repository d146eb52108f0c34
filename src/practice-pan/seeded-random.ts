// Randomness that comes out the same for the same seed, on every machine.

/** Uniform numbers in [0, 1) from a 32-bit seed (mulberry32, Tommy Ettinger, 2017, public domain; from memory). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normally distributed numbers, mean 0 and variance 1 (Box & Muller, Ann. Math. Stat. 29, 610, 1958). */
export function gaussianFrom(random: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const length = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    spare = length * Math.sin(angle);
    return length * Math.cos(angle);
  };
}

/** A number in [low, high) from `random`. */
export const between = (random: () => number, low: number, high: number): number =>
  low + (high - low) * random();
