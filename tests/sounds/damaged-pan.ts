// A pan after a knock: some of its notes struck several times, two of them damaged, and the truth beside it.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import {
  type Damage,
  type DamagedNote,
  damagedNote,
  damages,
  highest,
  lowest,
} from './damaged-note';
import type { Room } from './damaged-strike';
import { pinkNoise } from './noise';

export interface DamagedPan {
  readonly sampleRate: number;
  readonly notes: readonly DamagedNote[];
  /** Whether there is a record from before the knock. */
  readonly hasBefore: boolean;
}

const noiseSeconds = 3;
const noteCount = 6;
/** Highest note whose partials are asked for. */
const highestWithPartials = 84;

export interface DamagedPanOptions {
  /** Distance of the lines of a new doublet, cents. */
  readonly apart: readonly [least: number, most: number];
  /** The one damage of the pan's only note, or null for two by chance on six notes. */
  readonly only: Damage | null;
}

/** The pan of `seed`: six notes within a tenth, two of them damaged in different ways. */
export function damagedPan(
  seed: number,
  { apart, only }: DamagedPanOptions = { apart: [9, 25], only: null },
): DamagedPan {
  const random = seededRandom(seed);
  const sampleRate = random() < 0.5 ? 44100 : 48000;
  const base = lowest + Math.floor((highest - 15 - lowest) * random());
  const places = shuffled(random, 16).map((place) => base + place);
  // Partials are asked for up to C6 only: the two damaged notes come first.
  const judged = places.filter((note) => note <= highestWithPartials);
  const first = Math.floor(damages.length * random());
  const other = (first + 1 + Math.floor((damages.length - 1) * random())) % damages.length;
  const kinds = only === null ? [damages[first], damages[other]] : [only];
  const notes = [
    ...judged.slice(0, 2),
    ...places.filter((note) => !judged.slice(0, 2).includes(note)),
  ].slice(0, only === null ? noteCount : 1);
  const room: Room = {
    sampleRate,
    // In half of them as loud as in the scenes of single strikes, else quieter.
    snrDb: random() < 0.5 ? 20 : between(random, 20, 40),
    sympathetic: random() < 0.3 ? 10 : 6,
    ringSeconds: between(random, 0.2, 0.6),
    // Sun or shade: all notes one way, and on in that way while they are struck.
    sunCents: random() < 0.5 ? between(random, -15, 3) : 0,
    driftCents: random() < 0.5 ? between(random, -0.06, 0.06) : 0,
    noise: pinkNoise(random, sampleRate, noiseSeconds),
  };
  return {
    sampleRate,
    notes: notes.map((note, k) => damagedNote(random, note, kinds[k] ?? null, room, apart)),
    hasBefore: random() < 0.5 || kinds.includes('new-doublet'),
  };
}

function shuffled(random: () => number, count: number): readonly number[] {
  const order = Array.from({ length: count }, (_, k) => k);
  for (let k = count - 1; k > 0; k--) {
    const other = Math.floor((k + 1) * random());
    const here = order[k] ?? 0;
    order[k] = order[other] ?? 0;
    order[other] = here;
  }
  return order;
}
