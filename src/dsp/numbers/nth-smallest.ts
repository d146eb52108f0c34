/** The value at `place` (from 0) of the first `count` values if they were sorted; changes their order (Hoare's selection). */
export function nthSmallest(values: Float64Array, count: number, place: number): number {
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
