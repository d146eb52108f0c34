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
  correctOctave(octaves: 1 | -1): void;
  /** The band's pitch changed. */
  retune(): void;
}

const samplesPlayed = (samples: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer>[] => {
  const blocks: Float32Array<ArrayBuffer>[] = [];
  for (let from = 0; from < samples.length; from += blockLength) {
    blocks.push(samples.slice(from, from + blockLength));
  }
  return blocks;
};

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

  const context = (): ListeningContext => ({
    a4: ports.a4.value,
    expected: expected.value,
    notes: panNotes.value,
  });
  const tellContext = (): void => ear.setContext(context());
  const startAnew = (): void => {
    phase.value = { kind: 'listening' };
  };

  microphone.onState((state) => {
    microphoneState.value = state;
    light.keepOn(state.kind === 'listening' || state.kind === 'priming');
    if (state.kind === 'idle' && phase.value.kind === 'listening') phase.value = { kind: 'idle' };
  });
  ear.onState((state) => {
    earState.value = state;
  });
  ear.onHeard((heard) => {
    if (heard.kind === 'strike' && !heard.provisional) heardCount++;
    phase.value = phaseAfter(phase.value, heard);
  });

  const expect = (note: MidiNote | null): void => {
    expected.value = note;
    tellContext();
    if (phase.value.kind !== 'idle') startAnew();
  };

  return {
    phase,
    microphone: microphoneState,
    ear: earState,
    expected,
    fileNotice,
    isBusy: computed(
      () =>
        fileNotice.value.kind === 'reading' ||
        panNotes.value !== null ||
        !['idle', 'denied', 'absent', 'failed'].includes(microphoneState.value.kind),
    ),
    async listen() {
      fileNotice.value = { kind: 'none' };
      panNotes.value = null;
      tellContext();
      startAnew();
      await microphone.start();
    },
    async stop() {
      panNotes.value = null;
      expected.value = null;
      await microphone.stop();
      phase.value = { kind: 'idle' };
    },
    async openFile(file) {
      await microphone.stop();
      fileNotice.value = { kind: 'reading' };
      const result = await soundFiles.open(file);
      if (result.kind === 'unreadable') {
        fileNotice.value = result;
        return;
      }
      const { samples, sampleRate, resampled } = result.sound;
      heardCount = 0;
      tellContext();
      startAnew();
      ear.begin(sampleRate);
      for (const block of samplesPlayed(samples)) ear.feed(block);
      await ear.finish();
      fileNotice.value = { kind: 'read', heard: heardCount, resampled };
    },
    async beginPractice(source) {
      await microphone.stop();
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
      for (const block of samplesPlayed(sound)) ear.feed(block);
    },
    expect,
    correctOctave(octaves) {
      const note = readingOf(phase.value)?.note ?? expected.value;
      if (note !== null && note !== undefined) expect(midiNote(note + 12 * octaves));
    },
    retune() {
      tellContext();
      if (phase.value.kind !== 'idle') startAnew();
    },
  };
}
