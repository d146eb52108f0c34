// The middle of many numbers without sorting them all.

/** The value at `place` (from 0) of the first `count` values if they were sorted; changes their order (Hoare's selection). */
export function nthSmallest(values: Float64Array | number[], count: number, place: number): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1];
    let left = low;
    let right = high;
    while (left <= right) {
      while (left < high && values[left] < pivot) left++;
      while (right > low && values[right] > pivot) right--;
      if (left > right) break;
      const swapped = values[left];
      values[left++] = values[right];
      values[right--] = swapped;
    }
    if (place <= right) high = right;
    else if (place >= left) low = left;
    else break;
  }
  return values[place];
}

/**
 * The ear's one median: the middle one of the first `count` values, the upper of two; 0 of none. Changes their order.
 * (The domain's few numbers have `averages`: its median takes the mean of two.)
 */
export const upperMedian = (values: Float64Array | number[], count = values.length): number =>
  count === 0 ? 0 : nthSmallest(values, count, count >> 1);
