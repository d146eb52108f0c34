// One strike as hard as real pans are, with the truth beside it. `strikeScene` is the mild one.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';
import { garage, largeGarage, type Room, soundInRoom } from './garage-room';
import { type HardPartial, hardNote } from './hard-note';
import { type Partner, partnersOf, ringingAlong } from './hard-partners';
import { addStickAndShell, earlyLevel, exactHarmonics, type Struck } from './hard-rest';
import { pinkNoise } from './noise';
import { rollOff, type Scene, type SceneTruth } from './scene';

export interface HardTruth extends SceneTruth {
  /** 0 the softest stroke, 1 the hardest. */
  readonly strength: number;
  /** All settled lines at each partial, Hz: its own first, then a second one, then a ring partner's. */
  readonly lines: {
    readonly fundamental: readonly number[];
    readonly octave: readonly number[];
    readonly third: readonly number[];
  };
  readonly room: 'none' | 'garage' | 'large garage';
}

export interface HardScene extends Scene {
  readonly truth: HardTruth;
}

export interface HardOptions {
  readonly sampleRate: number | null;
  readonly seconds: number;
  /** Pink noise below the mean power of the first 0.5 s, dB; null for 15 to 45 by chance. */
  readonly snrDb: number | null;
  readonly lowest: number;
  readonly highest: number;
  /** Null for any of the pan. */
  readonly note: number | null;
  /** 0…1, null for any. */
  readonly strength: number | null;
  /** Null by chance: half of them in no room, a quarter in each garage. */
  readonly room: HardTruth['room'] | null;
  /** First-order high-pass of the microphone, Hz; null for 30 to 150 by chance, 0 for none. */
  readonly rollOffHz: number | null;
}

const usual: HardOptions = {
  sampleRate: null,
  seconds: 1.6,
  snrDb: null,
  lowest: 60,
  highest: 88,
  note: null,
  strength: null,
  room: null,
  rollOffHz: null,
};

/** As recorded with a good microphone, like the real strikes that the scenes are set against. */
export const studio: Partial<HardOptions> = { room: 'none', snrDb: 45, rollOffHz: 0 };

const at = 0.25;
const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const level = (db: number): number => 10 ** (db / 20);

/** The hard scene of `seed`: a note of a pan struck after a quarter of a second. */
export function hardScene(seed: number, options: Partial<HardOptions> = {}): HardScene {
  const asked = { ...usual, ...options };
  const random = seededRandom(seed * 2 + 0x5ca1ab1e);
  const chance = random();
  const sampleRate = asked.sampleRate ?? (chance < 0.5 ? 44100 : 48000);
  const drawn = asked.lowest + Math.floor((asked.highest - asked.lowest + 1) * random());
  const note = asked.note ?? drawn;
  const anyStrength = random();
  const strength = asked.strength ?? anyStrength;
  const hz = shifted(equal(note), between(random, -25, 25));
  const own = hardNote(random, note, hz, strength);
  const partners = partnersOf(random, note, own, asked);

  const samples = new Float32Array(Math.round(asked.seconds * sampleRate));
  const add = (partials: readonly StruckPartial[], gain = 1): void =>
    addStruckNote(samples, sampleRate, at, { partials, onset: 0.001 }, gain);
  add(
    [own.fundamental, own.octave, ...(own.third ? [own.third] : [])].flatMap((each) => each.lines),
  );
  const early = earlyLevel(samples, sampleRate, at);
  const [main] = own.fundamental.lines;
  if (!main) throw new Error('a note has a fundamental');
  const struck: Struck = { note, hz, strength, at, glide: main };
  add(partners.map(({ line }) => line));
  const ringing = ringingAlong(random, struck, asked);
  add(
    ringing.map(({ line }) => line),
    early,
  );
  add(exactHarmonics(random, struck, sampleRate));
  addStickAndShell(samples, sampleRate, struck, early, random);

  const room =
    asked.room ??
    (['none', 'none', 'garage', 'large garage'] as const)[Math.floor(4 * random())] ??
    'none';
  const heard = room === 'none' ? samples : soundInRoom(samples, sampleRate, roomOf(room), random);
  const anyRollOff = between(random, 30, 150);
  const rollOffHz = asked.rollOffHz ?? anyRollOff;
  if (rollOffHz > 0) rollOff(heard, sampleRate, rollOffHz);
  const gain = scaleToLoudness(heard, random, strength);
  const anySnr = between(random, 15, 45);
  const noise = addNoise(heard, sampleRate, asked.snrDb ?? anySnr, random);
  const partner = (of: Partner['of']): number[] =>
    partners.filter((each) => each.of === of).map(({ line }) => line.hz);
  return {
    samples: heard,
    sampleRate,
    truth: {
      note,
      at,
      strength,
      room,
      fundamental: truthOf(own.fundamental, gain),
      octave: truthOf(own.octave, gain),
      third: own.third && truthOf(own.third, gain),
      thirdKind: own.thirdKind,
      glideCents: own.glideCents,
      ringing: [...partners, ...ringing].map(({ note: other, line }) => ({
        note: other,
        hz: line.hz,
      })),
      pairHz: partner('octave')[0] ?? null,
      noise,
      lines: {
        fundamental: hzOf(own.fundamental),
        octave: [...hzOf(own.octave), ...partner('octave')],
        third: own.third
          ? [...hzOf(own.third), ...(own.thirdKind === 'twelfth' ? partner('twelfth') : [])]
          : [],
      },
    },
  };
}

const roomOf = (room: 'garage' | 'large garage'): Room =>
  room === 'garage' ? garage : largeGarage;
const hzOf = ({ lines }: HardPartial): number[] => lines.map(({ hz }) => hz);
const truthOf = ({ hz, lines: [own] }: HardPartial, gain: number) => ({
  hz,
  amplitude: gain * (own?.amplitude ?? 0),
  decaySeconds: own?.decaySeconds ?? 0,
});

/** Peak of a strike: −26 to −2 dB of full scale, by its strength and the distance; returns the gain. Never clipped. */
function scaleToLoudness(samples: Float32Array, random: () => number, strength: number): number {
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const wanted = level(Math.min(-2, -24 + 18 * strength + between(random, -4, 4)));
  const gain = wanted / Math.max(peak, 1e-9);
  for (let n = 0; n < samples.length; n++) samples[n] = gain * (samples[n] ?? 0);
  return gain;
}

/** Pink noise over the whole, `snrDb` below the mean power of the 0.5 s from the strike on; returns its deviation. */
function addNoise(
  samples: Float32Array,
  sampleRate: number,
  snrDb: number,
  random: () => number,
): number {
  const heard = samples.subarray(Math.round(at * sampleRate), Math.round((at + 0.5) * sampleRate));
  const power = heard.reduce((sum, value) => sum + value * value, 0) / heard.length;
  const deviation = Math.sqrt(power) * level(-snrDb);
  pinkNoise(random, sampleRate, samples.length / sampleRate).forEach((value, n) => {
    samples[n] = (samples[n] ?? 0) + deviation * value;
  });
  return deviation;
}
