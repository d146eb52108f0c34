/**
 * Sum of the products of the first `count` values. Four sums in turn, because with a single one each addition waits for
 * the one before.
 */
export function dot(a: Float64Array, b: Float64Array, count: number): number {
  let first = 0;
  let second = 0;
  let third = 0;
  let fourth = 0;
  let n = 0;
  for (; n + 3 < count; n += 4) {
    first += a[n] * b[n];
    second += a[n + 1] * b[n + 1];
    third += a[n + 2] * b[n + 2];
    fourth += a[n + 3] * b[n + 3];
  }
  for (; n < count; n++) first += a[n] * b[n];
  return first + second + (third + fourth);
}
