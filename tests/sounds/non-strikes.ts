// One seeded row of all that is no strike: made blows, voices and noises, and recorded knocks.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { realStrikes } from '../synthetic-sounds/real-strike';
import { chokedNote, droppedStick, hammerBlow } from './blows';
import { clap, rimKnock, woodenKnock } from './knock';
import { pinkNoise, scaledToPeak, speechLikeNoise } from './noise';
import { recordedKnocks } from './recorded-knocks';
import { inRoom, mainsHum, windNoise } from './room-sounds';
import { countingVoice } from './voices';

export interface NonStrike {
  /** Kind and number, for instance "hammer blow 12". */
  readonly name: string;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** Where the sound begins in its piece, s, and how long a piece is. */
const beginsAt = 0.4;
const pieceSeconds = 2.4;

type Maker = (random: () => number, sampleRate: number) => Float32Array;

const made: readonly (readonly [kind: string, make: Maker])[] = [
  ['hammer blow', (random, rate) => hammerBlow(random, rate, 1)],
  ['rim knock', (random, rate) => rimKnock(random, rate, 1)],
  ['speech', (random, rate) => speechLikeNoise(random, rate, 2)],
  ['clap', (random, rate) => clap(random, rate, 1)],
  ['dropped stick', (random, rate) => droppedStick(random, rate, 1.5)],
  ['counting voice', (random, rate) => countingVoice(random, rate, 2)],
  ['wooden knock', (random, rate) => woodenKnock(random, rate, 1)],
  ['wind', (random, rate) => windNoise(random, rate, 2)],
  ['mains hum', (random, rate) => mainsHum(random, rate, 2, between(random, 0, 1))],
];

/** Kinds of `nonStrikes`: nine made ones, then "choked strike" and "recorded" ones. */
export const nonStrikeKinds: readonly string[] = [
  ...made.map(([kind]) => kind),
  'choked strike',
  'recorded',
];

/**
 * `count` pieces of 2.4 s with no strike to be measured in them, the kinds taking turns; the same for the same
 * `seed`. Every piece has pink room noise 25 to 60 dB below its peak, its peak between −26 and −1 dB of full
 * scale, and every second one the echoes of a room.
 */
export async function nonStrikes(count: number, seed = 1): Promise<readonly NonStrike[]> {
  const strikes = await realStrikes();
  const knocks = await recordedKnocks();
  return Array.from({ length: count }, (_, index) => {
    const random = seededRandom(seed * 100_003 + index);
    const turn = index % nonStrikeKinds.length;
    const round = Math.floor(index / nonStrikeKinds.length);
    const kind = nonStrikeKinds[turn] ?? '';
    const maker = made[turn];
    const recorded = kind === 'recorded' ? knocks : strikes;
    // All recordings take their turn before any comes again.
    const chosen = recorded[(round + seed - 1) % recorded.length];
    const sampleRate = maker || !chosen ? (random() < 0.5 ? 44100 : 48000) : chosen.sampleRate;
    const sound = maker
      ? maker[1](random, sampleRate)
      : kind === 'recorded'
        ? (chosen?.samples ?? new Float32Array(0))
        : chokedNote(random, chosen?.samples ?? new Float32Array(0), sampleRate, 0.6);
    return {
      name: `${kind} ${index}${kind === 'recorded' ? `: ${chosen?.name}` : ''}`,
      samples: inPiece(random, sound, sampleRate),
      sampleRate,
    };
  });
}

function inPiece(
  random: () => number,
  sound: Float32Array,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const whole = new Float32Array(Math.round(pieceSeconds * sampleRate));
  const first = Math.round(beginsAt * sampleRate);
  whole.set(sound.subarray(0, whole.length - first), first);
  const heard =
    random() < 0.5 ? inRoom(random, whole, sampleRate, between(random, 0.2, 0.6)) : whole;
  const peak = 10 ** (between(random, -26, -1) / 20);
  const noise = peak * 10 ** (between(random, -60, -25) / 20);
  const room = pinkNoise(random, sampleRate, pieceSeconds);
  return scaledToPeak(heard).map((value, n) => peak * value + noise * (room[n] ?? 0));
}
