// One strike as a phone hears it in a room, with all that makes it hard, and the truth beside it.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';
import { pinkNoise } from './noise';

/** One partial's settled truth. */
export interface TruePartial {
  readonly hz: number;
  /** Amplitude at its maximum, linear. */
  readonly amplitude: number;
  readonly decaySeconds: number;
}

export interface SceneTruth {
  /** MIDI note that was struck. */
  readonly note: number;
  /** Seconds from the first sample. */
  readonly at: number;
  readonly fundamental: TruePartial;
  readonly octave: TruePartial;
  /** Null where the note has no third partial. */
  readonly third: TruePartial | null;
  readonly thirdKind: 'twelfth' | 'double-octave';
  /** Glide of the fundamental at the onset, cents. */
  readonly glideCents: number;
  /** The notes that ring along, with the frequencies of their lines, Hz. */
  readonly ringing: readonly { readonly note: number; readonly hz: number }[];
  /** The upper note of the octave pair, where it rings beside the octave. */
  readonly pairHz: number | null;
  /** Standard deviation of the pink noise, linear. */
  readonly noise: number;
}

export interface Scene {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  readonly truth: SceneTruth;
}

/** What a scene holds; every part can be changed to see what it costs. */
export interface SceneOptions {
  /** Hz, or null for 44,100 or 48,000 by chance. */
  readonly sampleRate: number | null;
  readonly seconds: number;
  readonly snrDb: number;
  readonly sympathetic: number;
  /** Deepest energy exchange, dB from crest to trough; 0 for none. */
  readonly wobbleDb: number;
  /** Largest frequency swing that follows the energy exchange, cents. */
  readonly wobbleCents: number;
  /** Largest glide, cents; 0 for none. */
  readonly glideCents: number;
  /** Whether the upper note of the octave pair rings 9 to 18 cents beside the octave. */
  readonly pair: boolean;
  /** Notes of the pan, lowest and highest. */
  readonly lowest: number;
  readonly highest: number;
  /** The struck note, or null for any of the pan. */
  readonly note: number | null;
  /** High-pass of the microphone: its order, and where it starts, Hz, or null for 60 to 150 by chance. */
  readonly rollOffOrder: 1 | 2 | 4;
  readonly rollOffHz: number | null;
  /** The microphone's own pink noise, which its high-pass does not weaken, dB below the sound; null for none. */
  readonly ownNoiseDb: number | null;
  /** Whether bass notes ring on as long as real ones can, T60 up to 5 s. */
  readonly longBass: boolean;
}

/** Where the high-pass of a phone's microphone starts, Hz (from memory, not measured). */
const usualRollOffHz = 150;

const usual: SceneOptions = {
  sampleRate: null,
  seconds: 1.6,
  snrDb: 20,
  sympathetic: 6,
  wobbleDb: 10,
  wobbleCents: 0.3,
  glideCents: 39,
  pair: false,
  lowest: 60,
  highest: 88,
  note: null,
  rollOffOrder: 1,
  rollOffHz: usualRollOffHz,
  ownNoiseDb: null,
  longBass: false,
};

/** A steep high-pass, a long ring: bass notes as the more deaf phones hear them (from memory, not measured). */
export const deafPhone: Partial<SceneOptions> = {
  rollOffOrder: 2,
  rollOffHz: null,
  ownNoiseDb: 45,
  longBass: true,
};

/** When the note is struck, s. */
const at = 0.25;
const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const level = (db: number): number => 10 ** (db / 20);
const sign = (random: () => number): number => (random() < 0.5 ? -1 : 1);

/** The scene of `seed`: a note of the pan struck after a quarter of a second. */
export function strikeScene(seed: number, options: Partial<SceneOptions> = {}): Scene {
  const asked = { ...usual, ...options };
  const random = seededRandom(seed);
  // What later options need by chance is drawn apart: scenes without them stay what they were.
  const apart = seededRandom(seed ^ 0x9e3779b9);
  const chance = random();
  const sampleRate = asked.sampleRate ?? (chance < 0.5 ? 44100 : 48000);
  const drawn = asked.lowest + Math.floor((asked.highest - asked.lowest + 1) * random());
  const struck = asked.note ?? drawn;

  const fundamentalHz = shifted(equal(struck), between(random, -25, 25));
  const octaveHz = shifted(2 * fundamentalHz, between(random, -15, 15));
  const thirdKind = struck < 67 && random() < 0.4 ? 'twelfth' : 'double-octave';
  const thirdHz = shifted(
    (thirdKind === 'twelfth' ? 3 : 4) * fundamentalHz,
    between(random, -20, 20),
  );
  const glideCents =
    asked.glideCents === 0
      ? 0
      : (random() < 0.75 ? 1 : -1) *
        between(random, Math.min(3, asked.glideCents), asked.glideCents);
  const ring = asked.longBass ? longRingTime(struck) : ringTime(struck);
  const decay = between(random, 0.85, 1.15) * ring;

  const maker = partialMaker(random, asked);
  const fundamental = maker(fundamentalHz, 1, decay, 0.001, glideCents);
  const octaveLevel = level(between(random, -15, 9));
  const octave = maker(octaveHz, octaveLevel, 0.8 * decay, 0.025, 0.6 * glideCents);
  const third =
    random() < 0.85
      ? maker(thirdHz, level(between(random, -30, 3)), 0.6 * decay, 0.012, 0.4 * glideCents)
      : null;

  const { sympathetic, lowest, highest } = asked;
  const others = ringingNotes(random, struck, { count: sympathetic, lowest, highest });
  const ringing = others.map((note) => ({
    note,
    hz: shifted(equal(note), between(random, -20, 20)),
    level: level(note === struck - 12 ? between(random, -30, -2) : between(random, -36, -15)),
  }));
  const along = ringing.map((each) => maker(each.hz, each.level, 1.3 * decay, 0.05, 0));
  const pairHz = asked.pair ? shifted(octaveHz, sign(random) * between(random, 9, 18)) : null;
  if (pairHz !== null) {
    along.push(maker(pairHz, octaveLevel * level(between(random, -9, 3)), decay, 0.04, 0));
  }

  const samples = new Float32Array(Math.round(asked.seconds * sampleRate));
  const partials = third ? [fundamental, octave, third] : [fundamental, octave];
  addStruckNote(samples, sampleRate, at, { partials, onset: 0.002 }, loudness);
  addStruckNote(samples, sampleRate, at, { partials: along, onset: 0.002 }, loudness);
  const noise = addNoise(samples, sampleRate, asked.snrDb, random);
  const rollOffHz = asked.rollOffHz ?? between(apart, 60, 150);
  rollOff(samples, sampleRate, rollOffHz, asked.rollOffOrder);
  if (asked.ownNoiseDb !== null) addNoise(samples, sampleRate, asked.ownNoiseDb, apart);
  return {
    samples,
    sampleRate,
    truth: {
      note: struck,
      at,
      fundamental: truthOf(fundamental),
      octave: truthOf(octave),
      third: third && truthOf(third),
      thirdKind,
      glideCents,
      ringing: ringing.map(({ note, hz }) => ({ note, hz })),
      pairHz,
      noise,
    },
  };
}

/** Gain of every partial, so that the loudest sum stays below full scale. */
export const loudness = 0.15;

const truthOf = ({ hz, amplitude, decaySeconds }: StruckPartial): TruePartial => ({
  hz,
  amplitude: loudness * amplitude,
  decaySeconds,
});

/** Time constant, s: T60 from 2 s for C4 down to 0.5 s for E6, longer below. */
export const ringTime = (note: number): number => Math.min(0.4, 0.28 - 0.2 * ((note - 60) / 28));

/** The same down to C4, then twice as long two octaves lower: T60 about 5 s for B0. */
const longRingTime = (note: number): number =>
  note >= 60 ? ringTime(note) : Math.min(0.75, 0.28 * 2 ** ((60 - note) / 24));

export type PartialMaker = (
  hz: number,
  amplitude: number,
  decaySeconds: number,
  bloomSeconds: number,
  glideCents: number,
) => StruckPartial;

export function partialMaker(
  random: () => number,
  { wobbleDb, wobbleCents }: Pick<SceneOptions, 'wobbleDb' | 'wobbleCents'>,
): PartialMaker {
  const glideSeconds = between(random, 0.03, 0.05);
  return (hz, amplitude, decaySeconds, bloomSeconds, glideCents) => ({
    hz,
    amplitude,
    decaySeconds,
    bloomSeconds,
    glideCents,
    glideSeconds,
    phase: 2 * Math.PI * random(),
    wobbleHz: between(random, 3, 15),
    wobbleDb: wobbleDb * between(random, 0.2, 1),
    wobbleCents: wobbleDb > 0 ? between(random, 0, wobbleCents) : 0,
    wobblePhase: 2 * Math.PI * random(),
  });
}

/** The octave below first, where the pan has it, then any others; none whose line falls on a partial. */
export function ringingNotes(
  random: () => number,
  struck: number,
  { count, lowest, highest }: { count: number; lowest: number; highest: number },
): readonly number[] {
  const tooClose = [0, 12, 19, 24].map((steps) => struck + steps);
  const chosen: number[] = count > 0 && struck - 12 >= lowest ? [struck - 12] : [];
  while (chosen.length < count) {
    const note = lowest + Math.floor((highest - lowest + 1) * random());
    if (!tooClose.includes(note) && !chosen.includes(note)) chosen.push(note);
  }
  return chosen;
}

/** Pink noise, `snrDb` below the mean power of the first 0.5 s after the strike; returns its deviation. */
function addNoise(
  samples: Float32Array,
  sampleRate: number,
  snrDb: number,
  random: () => number,
): number {
  const heard = samples.subarray(Math.round(at * sampleRate), Math.round((at + 0.5) * sampleRate));
  const power = heard.reduce((sum, value) => sum + value * value, 0) / heard.length;
  const deviation = Math.sqrt(power / 10 ** (snrDb / 10));
  pinkNoise(random, sampleRate, samples.length / sampleRate).forEach((value, n) => {
    samples[n] = (samples[n] ?? 0) + deviation * value;
  });
  return deviation;
}

/** High-pass in place: first order, or Butterworth as that many second orders in a row. */
export function rollOff(
  samples: Float32Array,
  sampleRate: number,
  hz = usualRollOffHz,
  order: 1 | 2 | 4 = 1,
): void {
  if (order === 1) firstOrder(samples, sampleRate, hz);
  // Quality of each second order of a Butterworth filter: 1 / (2 cos φ), φ the angle of its poles.
  for (const angle of { 1: [], 2: [Math.PI / 4], 4: [Math.PI / 8, (3 * Math.PI) / 8] }[order]) {
    secondOrder(samples, (2 * Math.PI * hz) / sampleRate, 1 / (2 * Math.cos(angle)));
  }
}

function firstOrder(samples: Float32Array, sampleRate: number, hz: number): void {
  const keep = Math.exp((-2 * Math.PI * hz) / sampleRate);
  let before = 0;
  let output = 0;
  samples.forEach((value, n) => {
    output = keep * (output + value - before);
    before = value;
    samples[n] = output;
  });
}

/** High-pass by the bilinear transform (R. Bristow-Johnson, Audio EQ Cookbook), `turn` in radians a sample. */
function secondOrder(samples: Float32Array, turn: number, quality: number): void {
  const alpha = Math.sin(turn) / (2 * quality);
  const [gain, back, far] = [(1 + Math.cos(turn)) / 2, -2 * Math.cos(turn), 1 - alpha];
  let [in1, in2, out1, out2] = [0, 0, 0, 0];
  samples.forEach((value, n) => {
    const output = (gain * (value - 2 * in1 + in2) - back * out1 - far * out2) / (1 + alpha);
    [in2, in1, out2, out1] = [in1, value, out1, output];
    samples[n] = output;
  });
}
