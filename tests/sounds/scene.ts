// One strike as a phone hears it in a room, with all that makes it hard, and the truth beside it.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';
import { pinkNoise } from './noise';

export interface SceneTruth {
  /** MIDI note that was struck. */
  readonly note: number;
  /** Seconds from the first sample. */
  readonly at: number;
  /** Settled frequencies, Hz. */
  readonly fundamentalHz: number;
  readonly octaveHz: number;
  readonly thirdHz: number;
  readonly thirdKind: 'twelfth' | 'double-octave';
  /** Glide of the fundamental at the onset, cents. */
  readonly glideCents: number;
  /** Settled frequencies of the notes that ring along, Hz. */
  readonly ringingHz: readonly number[];
}

export interface Scene {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  readonly truth: SceneTruth;
}

/** What measuring.md asks of a scene; every part can be changed to see what it costs. */
export interface SceneOptions {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly snrDb: number;
  readonly sympathetic: number;
  /** Deepest energy exchange, dB from crest to trough; 0 for none. */
  readonly wobbleDb: number;
}

const usual: SceneOptions = {
  sampleRate: 48000,
  seconds: 1.6,
  snrDb: 20,
  sympathetic: 6,
  wobbleDb: 10,
};

/** Where the high-pass of a phone's microphone starts, Hz (from memory, not measured). */
const rollOffHz = 150;

/** The scene of `seed`: `note`, or any from C4 to E6 if null, struck after a quarter of a second. */
export function strikeScene(
  seed: number,
  note: number | null = null,
  options: Partial<SceneOptions> = {},
): Scene {
  const { sampleRate, seconds, snrDb, sympathetic, wobbleDb } = { ...usual, ...options };
  const random = seededRandom(seed);
  const struck = note ?? 60 + Math.floor(29 * random());
  const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
  const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
  const level = (db: number): number => 10 ** (db / 20);

  const fundamentalHz = shifted(equal(struck), between(random, -25, 25));
  const octaveHz = shifted(2 * fundamentalHz, between(random, -15, 15));
  const thirdKind = struck < 67 && random() < 0.4 ? 'twelfth' : 'double-octave';
  const thirdTimes = thirdKind === 'twelfth' ? 3 : 4;
  const thirdHz = shifted(thirdTimes * fundamentalHz, between(random, -20, 20));
  const glideCents = (random() < 0.75 ? 1 : -1) * between(random, 3, 39);
  const glideSeconds = between(random, 0.03, 0.05);
  const decay = between(random, 0.85, 1.15) * (0.28 - 0.2 * ((struck - 60) / 28));

  const partial = (
    hz: number,
    amplitude: number,
    decaySeconds: number,
    bloomSeconds: number,
    glide: number,
  ): StruckPartial => ({
    hz,
    amplitude,
    decaySeconds,
    bloomSeconds,
    glideCents: glide,
    glideSeconds,
    phase: 2 * Math.PI * random(),
    wobbleHz: between(random, 3, 15),
    wobbleDb: wobbleDb * between(random, 0.2, 1),
    wobbleCents: wobbleDb > 0 ? between(random, 0, 0.3) : 0,
    wobblePhase: 2 * Math.PI * random(),
  });
  const partials = [
    partial(fundamentalHz, 1, decay, 0.001, glideCents),
    partial(octaveHz, level(between(random, -15, 3)), 0.8 * decay, 0.025, 0.6 * glideCents),
    partial(thirdHz, level(between(random, -26, -12)), 0.6 * decay, 0.012, 0.4 * glideCents),
  ];

  const others = ringingNotes(random, struck, sympathetic);
  const ringingHz = others.map((other) => shifted(equal(other), between(random, -20, 20)));
  const ringing = ringingHz.map((hz) =>
    partial(hz, level(between(random, -30, -15)), 1.3 * decay, 0.05, 0),
  );

  const at = 0.25;
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  addStruckNote(samples, sampleRate, at, { partials, onset: 0.002 }, 0.3);
  addStruckNote(samples, sampleRate, at, { partials: ringing, onset: 0.002 }, 0.3);
  addNoise(samples, sampleRate, at, snrDb, random);
  rollOff(samples, sampleRate);
  return {
    samples,
    sampleRate,
    truth: {
      note: struck,
      at,
      fundamentalHz,
      octaveHz,
      thirdHz,
      thirdKind,
      glideCents,
      ringingHz,
    },
  };
}

/** The octave below first, where the pan has it, then any others; none whose line falls on a partial. */
function ringingNotes(random: () => number, struck: number, count: number): readonly number[] {
  const tooClose = [0, 12, 19, 24].map((steps) => struck + steps);
  const chosen: number[] = count > 0 && struck - 12 >= 60 ? [struck - 12] : [];
  while (chosen.length < count) {
    const note = 60 + Math.floor(29 * random());
    if (!tooClose.includes(note) && !chosen.includes(note)) chosen.push(note);
  }
  return chosen;
}

/** Pink noise, `snrDb` below the mean power of the first 0.5 s after the strike. */
function addNoise(
  samples: Float32Array,
  sampleRate: number,
  at: number,
  snrDb: number,
  random: () => number,
): void {
  const heard = samples.subarray(Math.round(at * sampleRate), Math.round((at + 0.5) * sampleRate));
  const power = heard.reduce((sum, value) => sum + value * value, 0) / heard.length;
  const deviation = Math.sqrt(power / 10 ** (snrDb / 10));
  pinkNoise(random, sampleRate, samples.length / sampleRate).forEach((value, n) => {
    samples[n] = (samples[n] ?? 0) + deviation * value;
  });
}

/** First-order high-pass in place. */
function rollOff(samples: Float32Array, sampleRate: number): void {
  const keep = Math.exp((-2 * Math.PI * rollOffHz) / sampleRate);
  let before = 0;
  let output = 0;
  samples.forEach((value, n) => {
    output = keep * (output + value - before);
    before = value;
    samples[n] = output;
  });
}
