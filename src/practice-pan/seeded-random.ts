// Randomness that comes out the same for the same seed, on every machine.

/** Uniform numbers in [0, 1) from a 32-bit seed (mulberry32, Tommy Ettinger, 2017, public domain; from memory). */
export function seededRandom(seed: number): () => number {
  // Signed, because small signed integers are not put on the heap: the same bits, and faster.
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normally distributed numbers, mean 0 and variance 1 (Box & Muller, Ann. Math. Stat. 29, 610, 1958). */
export function gaussianFrom(random: () => number): () => number {
  // In an array, because a number that a closure keeps is made anew on the heap each time.
  const spare = new Float64Array(1);
  let isSpare = false;
  return () => {
    if (isSpare) {
      isSpare = false;
      return spare[0] ?? 0;
    }
    const length = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    spare[0] = length * Math.sin(angle);
    isSpare = true;
    return length * Math.cos(angle);
  };
}

/** A number in [low, high) from `random`. */
export const between = (random: () => number, low: number, high: number): number =>
  low + (high - low) * random();
