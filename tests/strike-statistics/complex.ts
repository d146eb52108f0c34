// Complex numbers, as the search for lines needs them: few and small.

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });
export const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const conjugate = (a: Complex): Complex => ({ re: a.re, im: -a.im });
export const squared = (a: Complex): number => a.re * a.re + a.im * a.im;
export const over = (a: Complex, b: Complex): Complex => {
  const size = squared(b);
  return size > 0
    ? { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size }
    : complex(0);
};

/** Sum of conj(a)·b. */
export const inner = (a: readonly Complex[], b: readonly Complex[]): Complex =>
  a.reduce((sum, each, n) => plus(sum, times(conjugate(each), b[n] ?? complex(0))), complex(0));

/** x of A·x = b for a small square A (rows), by Gauss with pivots; zeros where A is singular. */
export function solved(
  rows: readonly (readonly Complex[])[],
  right: readonly Complex[],
): Complex[] {
  const count = rows.length;
  const all = rows.map((row, n) => [...row, right[n] ?? complex(0)]);
  const cell = (row: number, column: number): Complex => all[row]?.[column] ?? complex(0);
  for (let column = 0; column < count; column++) {
    let pivot = column;
    for (let row = column; row < count; row++) {
      if (squared(cell(row, column)) > squared(cell(pivot, column))) pivot = row;
    }
    const [chosen, other] = [all[pivot], all[column]];
    if (!chosen || !other) continue;
    all[pivot] = other;
    all[column] = chosen;
    for (let row = 0; row < count; row++) {
      if (row === column) continue;
      const part = over(cell(row, column), cell(column, column));
      const line = all[row];
      if (!line) continue;
      for (let k = column; k <= count; k++)
        line[k] = minus(cell(row, k), times(part, cell(column, k)));
    }
  }
  return rows.map((_, n) => over(cell(n, count), cell(n, n)));
}

/** Roots of zⁿ + c[n−1]·zⁿ⁻¹ + … + c[0] (Durand and Kerner's iteration). */
export function rootsOf(coefficients: readonly Complex[]): Complex[] {
  const start = complex(0.4, 0.9);
  let power = complex(1);
  let roots = coefficients.map(() => {
    power = times(power, start);
    return power;
  });
  for (let turn = 0; turn < 200; turn++) {
    roots = roots.map((root, n) => {
      let value = complex(1);
      for (const each of [...coefficients].reverse()) value = plus(times(value, root), each);
      const apart = roots.reduce(
        (product, other, k) => (k === n ? product : times(product, minus(root, other))),
        complex(1),
      );
      return minus(root, over(value, apart));
    });
  }
  return roots;
}
