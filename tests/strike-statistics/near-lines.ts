// The damped lines around one frequency, by ESPRIT (Roy & Kailath, IEEE Trans. Acoust. Speech Signal Process. 37,
// 984, 1989) on the band around it. Shares no code with the ear.
import { amplitudesAt, type Sound, timesFrom } from './band-course';
import {
  type Complex,
  complex,
  conjugate,
  inner,
  minus,
  over,
  plus,
  rootsOf,
  solved,
  squared,
  times,
} from './complex';

export interface NearLine {
  readonly hz: number;
  /** Time constant, s; negative where it grows. */
  readonly decaySeconds: number;
  /** Energy in the window against the strongest line, dB. */
  readonly db: number;
}

/** Samples of the band a second, and the bell it is seen through: 32 Hz to its half, nothing from 64 Hz on. */
const bandRate = 100;
const bellSeconds = 1 / 32;
/** As many lines are looked for; what is not there comes out weak. */
const lineCount = 4;
const pencil = 16;
const turns = 100;

/** The lines within 20 Hz of `hz` between `from` and `to` s, strongest first. */
export function linesNear(sound: Sound, hz: number, from: number, to: number): readonly NearLine[] {
  const course = amplitudesAt(sound, hz, bellSeconds, timesFrom(from, to, 1 / bandRate));
  if (course.length < 2 * pencil || !course.some((each) => squared(each) > 0)) return [];
  const poles = rotationsOf(signalSpace(course)).filter((pole) => squared(pole) > 1e-6);
  const rows = poles.map((pole) => powersOf(pole, course.length));
  const amplitudes = solved(
    rows.map((row) => rows.map((other) => inner(row, other))),
    rows.map((row) => inner(row, course)),
  );
  const lines = poles.map((pole, n) => ({
    hz: hz + (Math.atan2(pole.im, pole.re) * bandRate) / (2 * Math.PI),
    decaySeconds: -2 / (bandRate * Math.log(squared(pole))),
    energy: squared(amplitudes[n] ?? complex(0)) * inner(rows[n] ?? [], rows[n] ?? []).re,
  }));
  const near = lines.filter((line) => Math.abs(line.hz - hz) < 20);
  const most = Math.max(1e-30, ...near.map(({ energy }) => energy));
  return near
    .map(({ hz: at, decaySeconds, energy }) => ({
      hz: at,
      decaySeconds,
      db: 10 * Math.log10(Math.max(energy / most, 1e-12)),
    }))
    .sort((a, b) => b.db - a.db);
}

function powersOf(pole: Complex, count: number): Complex[] {
  let power = complex(1);
  return Array.from({ length: count }, () => {
    const now = power;
    power = times(power, pole);
    return now;
  });
}

/** An orthonormal basis of the strongest `lineCount` directions of the windows of the course. */
function signalSpace(course: readonly Complex[]): Complex[][] {
  const windows = Array.from({ length: course.length - pencil + 1 }, (_, n) =>
    course.slice(n, n + pencil),
  );
  const products = Array.from({ length: pencil }, (_, row) =>
    Array.from({ length: pencil }, (_, column) =>
      windows.reduce(
        (sum, each) =>
          plus(sum, times(each[row] ?? complex(0), conjugate(each[column] ?? complex(0)))),
        complex(0),
      ),
    ),
  );
  let basis = Array.from({ length: lineCount }, (_, n) =>
    Array.from({ length: pencil }, (_, k) => complex(k % lineCount === n ? 1 : 0.1 * n, 0.01 * k)),
  );
  for (let turn = 0; turn < turns; turn++) {
    const moved = basis.map((vector) => products.map((row) => inner(row.map(conjugate), vector)));
    basis = orthonormal(moved);
  }
  return basis;
}

function orthonormal(vectors: readonly Complex[][]): Complex[][] {
  const done: Complex[][] = [];
  for (const vector of vectors) {
    let left = vector;
    for (const other of done) {
      const part = inner(other, left);
      left = left.map((each, n) => minus(each, times(part, other[n] ?? complex(0))));
    }
    const size = Math.sqrt(inner(left, left).re);
    done.push(left.map((each) => (size > 0 ? complex(each.re / size, each.im / size) : each)));
  }
  return done;
}

/** Eigenvalues of the turn from the basis without its last row to that without its first. */
function rotationsOf(basis: readonly Complex[][]): Complex[] {
  const early = basis.map((vector) => vector.slice(0, -1));
  const late = basis.map((vector) => vector.slice(1));
  const gram = early.map((row) => early.map((column) => inner(row, column)));
  const columns = late.map((column) =>
    solved(
      gram,
      early.map((row) => inner(row, column)),
    ),
  );
  const matrix = gram.map((_, row) => columns.map((column) => column[row] ?? complex(0)));
  return rootsOf(characteristic(matrix));
}

/** Coefficients of the characteristic polynomial, lowest first (Faddeev and Le Verrier). */
function characteristic(matrix: readonly Complex[][]): Complex[] {
  const size = matrix.length;
  const coefficients: Complex[] = Array.from({ length: size }, () => complex(0));
  let power = matrix.map((row) => row.map(() => complex(0)));
  let last = complex(1);
  for (let k = 1; k <= size; k++) {
    power = product(matrix, power).map((row, r) =>
      row.map((value, c) => (r === c ? plus(value, last) : value)),
    );
    const trace = product(matrix, power).reduce(
      (sum, row, n) => plus(sum, row[n] ?? complex(0)),
      complex(0),
    );
    last = over(trace, complex(-k));
    coefficients[size - k] = last;
  }
  return coefficients;
}

const product = (a: readonly Complex[][], b: readonly Complex[][]): Complex[][] =>
  a.map((row) =>
    row.map((_, column) =>
      row.reduce(
        (sum, value, k) => plus(sum, times(value, b[k]?.[column] ?? complex(0))),
        complex(0),
      ),
    ),
  );
