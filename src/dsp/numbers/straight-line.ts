// The ear's one straight line through points. (The domain's `line-fit` takes a few points with errors of their own.)

/**
 * Weighted least squares for y = level + slope·x from five sums, for points that come one by one (textbook; Press et
 * al., Numerical Recipes, "Fitting Data to a Straight Line").
 */
export class StraightLineFit {
  #points = 0;
  #w = 0;
  #x = 0;
  #xx = 0;
  #y = 0;
  #xy = 0;
  #yy = 0;

  add(x: number, y: number, weight = 1): void {
    this.#points++;
    this.#w += weight;
    this.#x += weight * x;
    this.#xx += weight * x * x;
    this.#y += weight * y;
    this.#xy += weight * x * y;
    this.#yy += weight * y * y;
  }

  /** Sum of all weights. */
  get weight(): number {
    return this.#w;
  }

  mean(): number {
    return this.#y / Math.max(1, this.#w);
  }

  get #determinant(): number {
    return this.#w * this.#xx - this.#x * this.#x;
  }

  /** Level where all points lie at one x: their mean; 0 and 0 without any weight. */
  line(): { readonly level: number; readonly slope: number } {
    const determinant = this.#determinant;
    const slope = determinant > 0 ? (this.#w * this.#xy - this.#x * this.#y) / determinant : 0;
    return { level: this.#w > 0 ? (this.#y - slope * this.#x) / this.#w : 0, slope };
  }

  /** Level at x = 0 with its standard error, all weights being 1: infinite for fewer than four points or one x. */
  atZero(): { readonly value: number; readonly error: number } {
    const n = this.#points;
    const determinant = this.#determinant;
    if (n < 4 || !(determinant > 0)) return { value: this.mean(), error: Number.POSITIVE_INFINITY };
    const { level: value, slope } = this.line();
    const rest = Math.max(0, this.#yy - value * this.#y - slope * this.#xy) / (n - 2);
    return { value, error: Math.sqrt((rest * this.#xx) / determinant) };
  }
}
