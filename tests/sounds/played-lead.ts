// Many strikes one after another on one lead, each as hard as a scene: what rings on is never cut off.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote } from '../../src/practice-pan/struck-note';
import { pinkNoise } from './noise';
import { loudness, partialMaker, ringingNotes, ringTime, rollOff } from './scene';

/** One stroke; `level` against the loudest possible one, 0…1. */
export interface Stroke {
  /** Seconds from the first sample. */
  readonly at: number;
  /** MIDI note. */
  readonly note: number;
  readonly level: number;
}

export interface PlayedLead {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

export interface PlayingOptions {
  readonly sampleRate: number;
  /** Sound after the last stroke, s. */
  readonly after: number;
  /** Pink noise under the mean power of the first 0.5 s of a full-level C5, dB. */
  readonly snrDb: number;
}

const usual: PlayingOptions = { sampleRate: 48000, after: 1.2, snrDb: 30 };

const lowest = 60;
const highest = 88;
const sympathetic = 6;
const exchange = { wobbleDb: 10, wobbleCents: 0.3 };
const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const level = (db: number): number => 10 ** (db / 20);

/** What stays the same from strike to strike. */
interface LeadNote {
  readonly hz: number;
  readonly octaveHz: number;
  readonly octaveDb: number;
  readonly thirdHz: number;
  readonly thirdDb: number | null;
  readonly decaySeconds: number;
}

function leadNote(random: () => number, note: number): LeadNote {
  const hz = shifted(equal(note), between(random, -25, 25));
  const times = note < 67 && random() < 0.4 ? 3 : 4;
  return {
    hz,
    octaveHz: shifted(2 * hz, between(random, -15, 15)),
    octaveDb: between(random, -15, 9),
    thirdHz: shifted(times * hz, between(random, -20, 20)),
    thirdDb: random() < 0.85 ? between(random, -30, 3) : null,
    decaySeconds: between(random, 0.85, 1.15) * ringTime(note),
  };
}

/** `strokes` on the lead of `seed` (C4 to E6), with glide, bloom, energy exchange, six ring partners and a phone's roll-off. */
export function playedLead(
  seed: number,
  strokes: readonly Stroke[],
  options: Partial<PlayingOptions> = {},
): PlayedLead {
  const { sampleRate, after, snrDb } = { ...usual, ...options };
  const random = seededRandom(seed);
  const lead = new Map(
    Array.from({ length: highest - lowest + 1 }, (_, n) => [
      lowest + n,
      leadNote(random, lowest + n),
    ]),
  );
  const noteOf = (note: number): LeadNote => {
    const found = lead.get(note);
    if (!found) throw new Error(`no note ${note} on the lead`);
    return found;
  };
  const last = Math.max(0, ...strokes.map(({ at }) => at));
  const samples = new Float32Array(Math.round((last + after) * sampleRate));
  for (const stroke of strokes) {
    const { hz, octaveHz, octaveDb, thirdHz, thirdDb, decaySeconds } = noteOf(stroke.note);
    // A soft stroke glides less, and its upper partials vary from strike to strike.
    const glide = stroke.level * (random() < 0.75 ? 1 : -1) * between(random, 3, 39);
    const varied = (db: number): number => level(db + between(random, -2, 2));
    const maker = partialMaker(random, exchange);
    const partials = [
      maker(hz, 1, decaySeconds, 0.001, glide),
      maker(octaveHz, varied(octaveDb), 0.8 * decaySeconds, 0.025, 0.6 * glide),
    ];
    if (thirdDb !== null) {
      partials.push(maker(thirdHz, varied(thirdDb), 0.6 * decaySeconds, 0.012, 0.4 * glide));
    }
    const others = ringingNotes(random, stroke.note, { count: sympathetic, lowest, highest });
    for (const other of others) {
      const db = other === stroke.note - 12 ? between(random, -30, -2) : between(random, -36, -15);
      partials.push(maker(noteOf(other).hz, level(db), 1.3 * decaySeconds, 0.05, 0));
    }
    const gain = loudness * stroke.level;
    addStruckNote(samples, sampleRate, stroke.at, { partials, onset: 0.002 }, gain);
  }
  const deviation = loudness * level(-snrDb) * meanLevel(noteOf(72));
  pinkNoise(random, sampleRate, samples.length / sampleRate).forEach((value, n) => {
    samples[n] = (samples[n] ?? 0) + deviation * value;
  });
  rollOff(samples, sampleRate);
  return { samples, sampleRate };
}

/** Root mean square of the fundamental and octave in their first 0.5 s, against the fundamental's amplitude. */
function meanLevel({ octaveDb, decaySeconds }: LeadNote): number {
  const power = (decay: number): number => (0.5 * decay * (1 - Math.exp(-1 / decay))) / 2 / 0.5;
  return Math.sqrt(power(decaySeconds) + level(octaveDb) ** 2 * power(0.8 * decaySeconds));
}
