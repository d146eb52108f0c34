// The strikes that are played into the microphone: made without any code of the app.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { floatWav } from '../synthetic-sounds/float-wav';
import { leadNote } from '../synthetic-sounds/sounds';
import { soundRate } from './sound-server';

/** What is planted in a note, cents: the fundamental against its target, the others against the own fundamental. */
export interface Planted {
  readonly fundamental: number;
  readonly octave: number;
  /** At four times the fundamental. */
  readonly third: number;
}

/** The note that every engine listens to: D5. */
export const listenedNote = 74;
export const listenedTruth: Planted = { fundamental: -9, octave: -5, third: 2 };

/** Frequency of a note in equal temperament at A4 = 440 Hz (ISO 16:1975). */
const targetOf = (note: number): number => 440 * 2 ** ((note - 69) / 12);

const soundSeconds = 1.3;
const dampSeconds = 0.1;

/** Writes a strike of `note` (MIDI number) into `folder`; returns the path of the sound file. */
export function writeStrike(folder: string, note: number, truth: Planted): string {
  const path = join(folder, `strike-${note}.wav`);
  const whole = leadNote({ target: targetOf(note), ...truth, thirdTimes: 4 }, soundRate);
  writeFileSync(path, floatWav(damped(whole), soundRate));
  return path;
}

/** A hand damps the note, so that the next strike need not wait until it has died away. */
function damped(sound: Float32Array): Float32Array {
  const end = soundSeconds * soundRate;
  const hand = dampSeconds * soundRate;
  return sound.slice(0, end).map((value, n) => value * Math.min(1, (end - n) / hand));
}
