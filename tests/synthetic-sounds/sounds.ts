// Sounds with a known truth, made without any code of the app: an error there must not hide here.

/** Numbers 0…1, the same for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export interface SoundPartial {
  /** Settled frequency, Hz. */
  readonly hz: number;
  readonly amplitude: number;
  /** Time constant of the decay, s. */
  readonly decay: number;
  /** Time constant of the rise, s. */
  readonly rise: number;
}

export const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);

/** `seconds` of a struck note: damped partials that bloom, and a glide from `glide` cents sharp that is over after 0.1 s. */
export function struckSound(
  partials: readonly SoundPartial[],
  { sampleRate, seconds, glide }: { sampleRate: number; seconds: number; glide: number },
): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  for (const { hz, amplitude, decay, rise } of partials) {
    let phase = 0.3;
    for (let n = 0; n < sound.length; n++) {
      const t = n / sampleRate;
      const level = amplitude * (1 - Math.exp(-t / rise)) * Math.exp(-t / decay);
      sound[n] = (sound[n] ?? 0) + level * Math.sin(phase);
      phase += (2 * Math.PI * shifted(hz, glide * Math.exp(-t / 0.02))) / sampleRate;
    }
  }
  return sound;
}

export interface NoteTruth {
  /** Frequency of the note's target, Hz. */
  readonly target: number;
  /** Fundamental against the target, cents. */
  readonly fundamental: number;
  /** Octave against twice its own fundamental, cents. */
  readonly octave: number;
  /** Third partial against `thirdTimes` times its own fundamental, cents. */
  readonly third: number;
  readonly thirdTimes: 3 | 4;
}

/** A lead note struck once, with the loudness, bloom and decay that measuring.md reports. */
export function leadNote(truth: NoteTruth, sampleRate: number): Float32Array<ArrayBuffer> {
  const own = shifted(truth.target, truth.fundamental);
  const octave = shifted(2 * own, truth.octave);
  const third = shifted(truth.thirdTimes * own, truth.third);
  return struckSound(
    [
      { hz: own, amplitude: 0.3, decay: 0.4, rise: 0.002 },
      { hz: octave, amplitude: 0.2, decay: 0.3, rise: 0.02 },
      { hz: third, amplitude: 0.08, decay: 0.22, rise: 0.01 },
    ],
    { sampleRate, seconds: 1.8, glide: 12 },
  );
}

/** A knock on wood: a burst and three modes that are gone within 60 ms. */
export function woodenKnock(sampleRate: number): Float32Array<ArrayBuffer> {
  const random = seeded(7);
  const sound = struckSound(
    [
      { hz: 310, amplitude: 0.5, decay: 0.014, rise: 0.0005 },
      { hz: 745, amplitude: 0.35, decay: 0.009, rise: 0.0005 },
      { hz: 1480, amplitude: 0.2, decay: 0.006, rise: 0.0005 },
    ],
    { sampleRate, seconds: 0.3, glide: 0 },
  );
  return sound.map(
    (value, n) => value + 0.3 * (random() - 0.5) * Math.exp(-n / sampleRate / 0.004),
  );
}

/** Syllables: a voice whose pitch and vowel move all the time, with a hiss between them. */
export function speechLikeNoise(sampleRate: number, seconds: number): Float32Array<ArrayBuffer> {
  const random = seeded(11);
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  for (let start = 0.1; start < seconds - 0.4; start += 0.24 + 0.2 * random()) {
    const length = 0.14 + 0.12 * random();
    const pitch = 100 + 60 * random();
    const bend = 0.7 + 0.7 * random();
    const vowel = 400 + 500 * random();
    const first = Math.round(start * sampleRate);
    const count = Math.round(length * sampleRate);
    let phase = 0;
    for (let n = 0; n < count && first + n < sound.length; n++) {
      const x = n / count;
      const hz = pitch * (1 + (bend - 1) * x + 0.02 * Math.sin(40 * x));
      phase += (2 * Math.PI * hz) / sampleRate;
      let voice = 0;
      for (let k = 1; k * hz < 3000; k++) {
        voice += Math.sin(k * phase) / (1 + ((k * hz - vowel * (1 + 0.3 * x)) / 180) ** 2);
      }
      sound[first + n] = 0.12 * voice * Math.sin(Math.PI * x) ** 2;
    }
    const hissStart = first + count;
    for (let n = 0; n < 0.06 * sampleRate && hissStart + n < sound.length; n++) {
      sound[hissStart + n] = 0.04 * (random() - 0.5);
    }
  }
  return sound;
}

/** `sounds` at their times (s) in `seconds` of faint seeded noise: a room is never made of exact zeros. */
export function placed(
  sounds: readonly { readonly at: number; readonly samples: Float32Array }[],
  { sampleRate, seconds }: { sampleRate: number; seconds: number },
): Float32Array<ArrayBuffer> {
  const random = seeded(3);
  const whole = Float32Array.from(
    { length: Math.round(seconds * sampleRate) },
    () => 1e-4 * (random() - 0.5),
  );
  for (const { at, samples } of sounds) {
    const first = Math.round(at * sampleRate);
    samples.forEach((value, n) => {
      whole[first + n] = (whole[first + n] ?? 0) + value;
    });
  }
  return whole;
}
