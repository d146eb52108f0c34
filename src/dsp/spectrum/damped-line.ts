// A line in a narrow band that only decays.
export interface DampedLine {
  /** Offset from the band's centre, Hz. */
  readonly offsetHz: number;
  /** One standard error of the frequency, Hz. */
  readonly sigmaHz: number;
  /** Amplitude decay rate, 1/s (1 / time constant). */
  readonly decayRate: number;
  /** Amplitude at the first sample of the window. */
  readonly amplitude: number;
  /** Phase at the first sample of the window, without the glide, radians. */
  readonly phase: number;
}
