// Seeded recordings of a tuner at work: a strike, a set of hammer blows, a strike, and what still rings in between.
import { notesOf } from '../../src/domain/pans/layout';
import type { MidiNote } from '../../src/domain/tuning/units';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { type BlowBank, blowMakers } from './blow-kinds';
import { pinkNoise, scaledToPeak } from './noise';
import { inRoom } from './room-sounds';

export interface BlowRecording {
  /** Kind of blow and number, for instance "made blow 12". */
  readonly name: string;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  /** The note that is worked on, and all notes of its pan. */
  readonly note: MidiNote;
  readonly notes: readonly MidiNote[];
  /** When each blow of the set falls, s. */
  readonly blows: readonly number[];
  /** When the note is struck before and after the set, s; not in every recording. */
  readonly strikes: readonly number[];
}

/**
 * `count` recordings, the kinds of blows taking turns, sets of 1 to 6 blows 0.3 to 0.9 s apart; the same for the same
 * `seed`. Three of four begin with a strike that still rings when the first blow falls, three of four end with one.
 * Every blow lets the note and two others of the pan ring along, each 20 to 36 dB below it. Every second one is in a room
 * with echoes; pink noise lies 35 to 65 dB below full scale.
 */
export function blowRecordings(count: number, bank: BlowBank, seed = 1): readonly BlowRecording[] {
  return Array.from({ length: count }, (_, index) => {
    const random = seededRandom(seed * 70_001 + index);
    const maker = blowMakers[index % blowMakers.length];
    if (!maker) throw new Error('there are no kinds of blows');
    const set = 1 + (Math.floor(index / blowMakers.length) % 6);
    const sampleRate = random() < 0.5 ? 44_100 : 48_000;
    const oneBlow = () => maker[1](random, sampleRate, bank);
    return { name: `${maker[0]} ${index}`, ...recording(random, sampleRate, set, oneBlow) };
  });
}

function recording(
  random: () => number,
  sampleRate: number,
  set: number,
  oneBlow: () => Float32Array,
): Omit<BlowRecording, 'name'> {
  const pan = createPracticePan(1 + Math.floor(1000 * random()));
  const notes = notesOf(pan.layout);
  const anyNote = (): MidiNote => {
    const note = notes[Math.floor(notes.length * random())];
    if (note === undefined) throw new Error('the pan has no notes');
    return note;
  };
  const note = anyNote();
  const { blows, strikes, end } = timesOf(random, set);
  const sound = new Float32Array(Math.round((end + 1.4) * sampleRate));
  const add = (start: number, what: Float32Array, gain: number): void => {
    const first = Math.round(start * sampleRate);
    for (let n = 0; n < what.length && first + n < sound.length; n++) {
      sound[first + n] = (sound[first + n] ?? 0) + gain * (what[n] ?? 0);
    }
  };
  const strength = between(random, 0.15, 0.7);
  const ringing = [note, anyNote(), anyNote()].map((each) =>
    scaledToPeak(pan.strike(each, 0.7, sampleRate)),
  );
  for (const at of blows) {
    const peak = strength * between(random, 0.7, 1.3);
    add(at, oneBlow(), peak);
    for (const each of ringing) add(at, each, peak * 10 ** (-between(random, 20, 36) / 20));
  }
  for (const at of strikes) add(at, pan.strike(note, 0.8, sampleRate), 1);
  const hasEchoes = random() < 0.5;
  const heard = hasEchoes ? inRoom(random, sound, sampleRate, between(random, 0.2, 0.5)) : sound;
  const room = pinkNoise(random, sampleRate, heard.length / sampleRate);
  const noise = 10 ** (-between(random, 35, 65) / 20);
  const loudest = heard.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const gain = Math.min(1, 0.9 / loudest);
  const samples = heard.map((value, n) => gain * value + noise * (room[n] ?? 0));
  return { samples, sampleRate, note, notes, blows, strikes };
}

function timesOf(random: () => number, set: number) {
  const strikes: number[] = [];
  const blows: number[] = [];
  let at = 0.4;
  if (random() < 0.75) {
    strikes.push(at);
    at += between(random, 0.65, 1.2);
  }
  for (let blow = 0; blow < set; blow++) {
    blows.push(at);
    at += between(random, 0.3, 0.9);
  }
  at += between(random, 0.2, 0.8);
  if (random() < 0.75) strikes.push(at);
  return { blows, strikes, end: at };
}
