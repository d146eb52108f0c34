export const seedsFrom = (first: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, n) => first + n);
