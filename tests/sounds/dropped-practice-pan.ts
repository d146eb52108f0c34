// A practice pan before and after a fall: what is wrong with it is planted, the rest is as it was.
import { notesOf } from '../../src/domain/pans/layout';
import { cents, type MidiNote, midiNote } from '../../src/domain/tuning/units';
import type { PracticeTruth } from '../../src/practice-pan/practice-levels';
import { createPracticePan, type PracticePan } from '../../src/practice-pan/practice-pan';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { rattleOf, rattleSound } from './rattle';

export interface Fall {
  /** What the whole pan did, cents. */
  readonly shift: number;
  /** What these notes did besides, cents. */
  readonly moved: Readonly<Record<number, number>>;
  readonly choked: readonly number[];
  /** Each strike this much lower than the one before, cents. */
  readonly walking: Readonly<Record<number, number>>;
  readonly buzzing: readonly number[];
}

export interface DroppedPan {
  readonly notes: readonly MidiNote[];
  /** Strike number `n` (from 0) of a note. */
  strike(note: MidiNote, n: number, when: 'before' | 'now'): Float32Array<ArrayBuffer>;
}

/** A choked note rings for this part of its usual time. */
const chokedPart = 0.28;

/** The pan of `seed`, struck with `loudness` 0…1; its octaves and thirds are good, and it was in tune. */
export function droppedPracticePan(
  seed: number,
  fall: Fall,
  { sampleRate, loudness }: { readonly sampleRate: number; readonly loudness: number },
): DroppedPan {
  const random = seededRandom(seed);
  const good = (): number => 4 * random() - 2;
  const notes = notesOf(createPracticePan(seed).layout);
  const truths = new Map<MidiNote, PracticeTruth>(
    notes.map((note) => [
      note,
      {
        fundamentalCents: cents(good()),
        octaveCents: cents(good()),
        third: { kind: 'double-octave', cents: cents(good()) },
      },
    ]),
  );
  /** The pan with its notes moved: another pan for every step of a walk. */
  const panMoved = (by: (note: MidiNote) => number): PracticePan =>
    createPracticePan(seed, {
      planted: new Map(
        [...truths].map(([note, truth]) => [
          note,
          { ...truth, fundamentalCents: cents(truth.fundamentalCents + by(note)) },
        ]),
      ),
    });
  const before = panMoved(() => 0);
  const after = new Map<number, PracticePan>();
  const panAfter = (n: number): PracticePan => {
    const made =
      after.get(n) ??
      panMoved((note) => fall.shift + (fall.moved[note] ?? 0) + n * (fall.walking[note] ?? 0));
    after.set(n, made);
    return made;
  };
  return {
    notes,
    strike(note, n, when) {
      if (when === 'before') return before.strike(note, loudness, sampleRate);
      const sound = panAfter(fall.walking[note] === undefined ? 0 : n).strike(
        note,
        loudness,
        sampleRate,
      );
      const damped = fall.choked.includes(note) ? choked(sound, note, sampleRate) : sound;
      return fall.buzzing.includes(note) ? buzzing(damped, note, seed + n, sampleRate) : damped;
    },
  };
}

const hzOf = (note: MidiNote): number => 440 * 2 ** ((note - 69) / 12);
/** About as long as the practice pan's own notes ring, s. */
const ringOf = (note: MidiNote): number => 0.3 - 0.15 * ((note - 60) / 28);

function choked(
  sound: Float32Array<ArrayBuffer>,
  note: MidiNote,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const rate = (1 / chokedPart - 1) / ringOf(note);
  return sound.map((value, k) => value * Math.exp((-rate * k) / sampleRate));
}

function buzzing(
  sound: Float32Array<ArrayBuffer>,
  note: MidiNote,
  seed: number,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  // One loose part for all strikes of the note; how it is hit differs.
  const part = rattleOf(seededRandom(midiNote(note)), 'buzzing', {
    hz: hzOf(note),
    decaySeconds: ringOf(note),
  });
  const heard = sound.subarray(0, Math.round(0.3 * sampleRate));
  const energy = heard.reduce((sum, value) => sum + value * value, 0);
  const noise = rattleSound(seededRandom(seed), sampleRate, { ...part, levelDb: -8 }, 1, energy);
  return sound.map((value, k) => value + (noise[k] ?? 0));
}
