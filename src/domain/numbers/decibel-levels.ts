// Decibels against 1, and back. Silence has no level, so the caller says what it counts as.

/** Level of a power, dB; a power below `least` counts as that. */
export const dbOfPower = (power: number, least: number): number =>
  10 * Math.log10(Math.max(power, least));

/** Level of an amplitude, dB; an amplitude below `least` counts as that. */
export const dbOfAmplitude = (amplitude: number, least: number): number =>
  20 * Math.log10(Math.max(amplitude, least));

export const powerOfDb = (db: number): number => 10 ** (db / 10);

export const amplitudeOfDb = (db: number): number => 10 ** (db / 20);
