// Listening: one path for the microphone, a sound file and the practice pan.
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { ListeningContext } from '../domain/measurement/strike';
import { notesOf } from '../domain/pans/layout';
import type {
  Ear,
  EarState,
  Microphone,
  MicrophoneState,
  PracticeSource,
  ScreenLight,
  SoundFiles,
  Speaker,
} from '../domain/ports';
import { type Hertz, type MidiNote, midiNote } from '../domain/tuning/units';
import { phaseAfter, type ReadoutPhase, readingOf } from './readout-phase';

const practiceRate = 48000;
const practiceLoudness = 0.7;
const blockLength = 4096;

/** Notes that can be named: B0 to G6, from the lowest twelve bass to the highest lead. */
export const lowestNamed: MidiNote = midiNote(23);
export const highestNamed: MidiNote = midiNote(91);

/** What became of the last sound file. */
export type FileNotice =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'unreadable'; readonly why: 'empty' | 'not-sound' | 'too-long' }
  | { readonly kind: 'read'; readonly heard: number; readonly resampled: boolean };

export interface ListenPorts {
  readonly microphone: Microphone;
  readonly ear: Ear;
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
  readonly light: ScreenLight;
  readonly a4: ReadonlySignal<Hertz>;
}

export interface ListenModel {
  readonly phase: ReadonlySignal<ReadoutPhase>;
  readonly microphone: ReadonlySignal<MicrophoneState>;
  readonly ear: ReadonlySignal<EarState>;
  readonly expected: ReadonlySignal<MidiNote | null>;
  readonly fileNotice: ReadonlySignal<FileNotice>;
  /** The note an octave above and below the one that was taken or named; null: nothing to correct. */
  readonly octaves: ReadonlySignal<{
    readonly up: MidiNote | null;
    readonly down: MidiNote | null;
  }>;
  /** Something is being measured: not the moment for an update. */
  readonly isBusy: ReadonlySignal<boolean>;
  listen(): Promise<void>;
  stop(): Promise<void>;
  openFile(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<void>;
  beginPractice(source: PracticeSource): Promise<void>;
  strikePractice(source: PracticeSource, note: MidiNote): void;
  /** Name the note that will be struck, or null for any. */
  expect(note: MidiNote | null): void;
  /** The note was taken in the wrong octave: expect it an octave higher (+1) or lower (−1). */
  correctOctave(direction: 1 | -1): void;
  /** The band's pitch changed. */
  retune(): void;
}

const blocksOf = (samples: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer>[] => {
  const blocks: Float32Array<ArrayBuffer>[] = [];
  for (let from = 0; from < samples.length; from += blockLength) {
    blocks.push(samples.slice(from, from + blockLength));
  }
  return blocks;
};

const isMicrophoneOpen = ({ kind }: MicrophoneState): boolean =>
  kind === 'priming' || kind === 'listening' || kind === 'silent';

/** The model of everything that is heard; connect it once. */
export function createListenModel(ports: ListenPorts): ListenModel {
  const { microphone, ear, soundFiles, speaker, light } = ports;
  const phase = signal<ReadoutPhase>({ kind: 'idle' });
  const microphoneState = signal<MicrophoneState>({ kind: 'idle' });
  const earState = signal<EarState>({ kind: 'ready' });
  const expected = signal<MidiNote | null>(null);
  const fileNotice: Signal<FileNotice> = signal<FileNotice>({ kind: 'none' });
  const panNotes = signal<readonly MidiNote[] | null>(null);
  let heardCount = 0;
  /** Who uses the ear; what was started for an earlier user must not come through later. */
  let turn = 0;
  let soundFrom: 'none' | 'microphone' | 'file' | 'practice' = 'none';

  const context = (): ListeningContext => ({
    a4: ports.a4.value,
    expected: expected.value,
    notes: panNotes.value,
  });
  const tellContext = (): void => ear.setContext(context());
  const startAnew = (): void => {
    phase.value = { kind: 'listening' };
  };
  /** Nothing more will be heard; a verdict stays. */
  const endListening = (): void => {
    if (phase.value.kind === 'listening') phase.value = { kind: 'idle' };
  };

  microphone.onState((state) => {
    microphoneState.value = state;
    const isOpen = isMicrophoneOpen(state);
    light.keepOn(isOpen);
    if (soundFrom !== 'microphone') return;
    if (!isOpen) endListening();
    else if (phase.value.kind === 'idle') startAnew();
  });
  ear.onState((state) => {
    earState.value = state;
    // Its port died with the analysis: "listening" would not be true any more.
    if (state.kind === 'failed' && soundFrom === 'microphone') void microphone.stop();
  });
  ear.onHeard((heard) => {
    // The analysis may still finish a strike after "Stop".
    if (phase.value.kind === 'idle') return;
    if (heard.kind === 'strike' && !heard.provisional) heardCount++;
    phase.value = phaseAfter(phase.value, heard);
  });

  const expect = (note: MidiNote | null): void => {
    expected.value = note;
    tellContext();
    if (phase.value.kind !== 'idle') startAnew();
  };

  const octaves = computed(() => {
    const note = readingOf(phase.value)?.note ?? expected.value;
    const within = (other: number): MidiNote | null =>
      other >= lowestNamed && other <= highestNamed ? midiNote(other) : null;
    return note === null
      ? { up: null, down: null }
      : { up: within(note + 12), down: within(note - 12) };
  });

  return {
    phase,
    microphone: microphoneState,
    ear: earState,
    expected,
    fileNotice,
    octaves,
    isBusy: computed(
      () =>
        fileNotice.value.kind === 'reading' ||
        panNotes.value !== null ||
        !['idle', 'denied', 'absent', 'failed'].includes(microphoneState.value.kind),
    ),
    async listen() {
      turn++;
      soundFrom = 'microphone';
      fileNotice.value = { kind: 'none' };
      panNotes.value = null;
      tellContext();
      // "Strike any note" waits until the microphone is open.
      phase.value = { kind: 'idle' };
      await microphone.start();
    },
    async stop() {
      turn++;
      soundFrom = 'none';
      panNotes.value = null;
      expected.value = null;
      fileNotice.value = { kind: 'none' };
      phase.value = { kind: 'idle' };
      await microphone.stop();
    },
    async openFile(file) {
      const mine = ++turn;
      soundFrom = 'file';
      panNotes.value = null;
      phase.value = { kind: 'idle' };
      fileNotice.value = { kind: 'reading' };
      await microphone.stop();
      const result = await soundFiles.open(file);
      if (mine !== turn) return;
      if (result.kind === 'unreadable') {
        fileNotice.value = result;
        return;
      }
      const { samples, sampleRate, resampled } = result.sound;
      heardCount = 0;
      tellContext();
      startAnew();
      ear.begin(sampleRate);
      for (const block of blocksOf(samples)) ear.feed(block);
      await ear.finish();
      if (mine !== turn) return;
      endListening();
      fileNotice.value = { kind: 'read', heard: heardCount, resampled };
    },
    async beginPractice(source) {
      const mine = ++turn;
      soundFrom = 'practice';
      await microphone.stop();
      if (mine !== turn) return;
      fileNotice.value = { kind: 'none' };
      panNotes.value = notesOf(source.layout);
      expected.value = null;
      tellContext();
      ear.begin(practiceRate);
      startAnew();
    },
    strikePractice(source, note) {
      const sound = source.strike(note, practiceLoudness, practiceRate);
      speaker.play(sound.slice(), practiceRate);
      for (const block of blocksOf(sound)) ear.feed(block);
    },
    expect,
    correctOctave(direction) {
      const note = direction === 1 ? octaves.value.up : octaves.value.down;
      if (note !== null) expect(note);
    },
    retune() {
      tellContext();
      if (phase.value.kind !== 'idle') startAnew();
    },
  };
}
