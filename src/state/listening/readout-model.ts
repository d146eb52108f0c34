// What the readout shows: the phase, the note that is expected, and the octave put right by one tap.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Heard } from '../../domain/measurement/strike';
import { readingAtOctave, strikeAtOctave } from '../../domain/reading/correct-octave';
import type { Reading } from '../../domain/reading/reading';
import { type MidiNote, midiNote } from '../../domain/tuning/units';
import { phaseAfter, type ReadoutPhase, readingOf } from './readout-phase';

/** Notes that can be named: B0 to G6, from the lowest twelve bass to the highest lead. */
export const lowestNamed: MidiNote = midiNote(23);
export const highestNamed: MidiNote = midiNote(91);

export interface OctaveChoice {
  readonly up: MidiNote | null;
  readonly down: MidiNote | null;
}

export interface ReadoutModel {
  readonly phase: ReadonlySignal<ReadoutPhase>;
  readonly expected: ReadonlySignal<MidiNote | null>;
  /** The note an octave above and below the one that was taken or named; null: nothing to correct. */
  readonly octaves: ReadonlySignal<OctaveChoice>;
  hear(heard: Heard): void;
  /** Show that a strike is awaited. */
  startAnew(): void;
  /** Nothing more will be heard; a verdict stays. */
  endListening(): void;
  /** Show nothing. */
  clear(): void;
  /** Name the note that will be struck, or null for any. */
  expect(note: MidiNote | null): void;
  /** Any note may be struck; what is shown stays. */
  expectAny(): void;
  /** The note was taken in the wrong octave: read it an octave higher (+1) or lower (−1), or await a new strike. */
  correctOctave(direction: 1 | -1): void;
}

/** `tellExpected` is called after every change of the expected note that a listening ear must know. */
export function createReadoutModel(tellExpected: () => void): ReadoutModel {
  const phase = signal<ReadoutPhase>({ kind: 'idle' });
  const expected = signal<MidiNote | null>(null);
  /** The event whose octave was put right: the ear may still say the old note of it. */
  let correctedEvent: number | null = null;
  /** Before the first blow, what is too soft is the room: nobody has struck anything. */
  let hasStruck = false;

  const octaves = computed(() => octavesOf(readingOf(phase.value)?.note ?? expected.value));
  const startAnew = (): void => {
    phase.value = { kind: 'listening' };
    correctedEvent = null;
  };
  const expect = (note: MidiNote | null): void => {
    expected.value = note;
    tellExpected();
    if (phase.value.kind !== 'idle') startAnew();
  };
  const show = (reading: Reading): void => {
    phase.value = reading.settled
      ? { kind: 'settled', reading }
      : { kind: 'heard', reading, before: null };
    correctedEvent = reading.heard.at(-1)?.event ?? null;
  };

  return {
    phase,
    expected,
    octaves,
    hear(heard) {
      // The analysis may still finish a strike after "Stop".
      if (phase.value.kind === 'idle') return;
      const isSoft = heard.kind === 'refused' && heard.reason === 'too-soft';
      if (isSoft && !hasStruck) return;
      hasStruck = true;
      const isLate = heard.event === correctedEvent;
      const now = isLate ? inOctaveOf(heard, expected.value) : heard;
      if (now) phase.value = phaseAfter(phase.value, now);
    },
    startAnew,
    endListening() {
      hasStruck = false;
      if (phase.value.kind === 'listening') phase.value = { kind: 'idle' };
    },
    clear() {
      hasStruck = false;
      phase.value = { kind: 'idle' };
      correctedEvent = null;
    },
    expect,
    expectAny() {
      expected.value = null;
    },
    correctOctave(direction) {
      const note = direction === 1 ? octaves.value.up : octaves.value.down;
      if (note === null) return;
      const reading = readingOf(phase.value);
      const corrected = reading && readingAtOctave(reading, direction);
      expected.value = note;
      tellExpected();
      if (corrected) show(corrected);
      else if (phase.value.kind !== 'idle') startAnew();
    },
  };
}

function octavesOf(note: MidiNote | null): OctaveChoice {
  const within = (other: number): MidiNote | null =>
    other >= lowestNamed && other <= highestNamed ? midiNote(other) : null;
  return note === null
    ? { up: null, down: null }
    : { up: within(note + 12), down: within(note - 12) };
}

/** A late word on a strike whose octave was put right: in the right octave, or null if it adds nothing. */
function inOctaveOf(heard: Heard, expected: MidiNote | null): Heard | null {
  if (heard.kind === 'refused') {
    return heard.reason === 'wrong-note' || heard.reason === 'which-note' ? null : heard;
  }
  if (heard.kind !== 'strike' || expected === null || heard.note === expected) return heard;
  if (heard.note + 12 === expected) return strikeAtOctave(heard, 1);
  if (heard.note - 12 === expected) return strikeAtOctave(heard, -1);
  return heard;
}
