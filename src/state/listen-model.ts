// Listening: one path for the microphone, a sound file and the practice pan.
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
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
import type { Hertz, MidiNote } from '../domain/tuning/units';
import { createReadoutModel, type ReadoutModel } from './readout-model';

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

export interface ListenModel
  extends Pick<ReadoutModel, 'phase' | 'expected' | 'octaves' | 'expect' | 'correctOctave'> {
  readonly microphone: ReadonlySignal<MicrophoneState>;
  readonly ear: ReadonlySignal<EarState>;
  readonly fileNotice: ReadonlySignal<FileNotice>;
  /** Something is being measured: not the moment for an update. */
  readonly isBusy: ReadonlySignal<boolean>;
  listen(): Promise<void>;
  stop(): Promise<void>;
  openFile(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<void>;
  beginPractice(source: PracticeSource): Promise<void>;
  strikePractice(source: PracticeSource, note: MidiNote): void;
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
  const microphoneState = signal<MicrophoneState>({ kind: 'idle' });
  const earState = signal<EarState>({ kind: 'ready' });
  const fileNotice: Signal<FileNotice> = signal<FileNotice>({ kind: 'none' });
  const panNotes = signal<readonly MidiNote[] | null>(null);
  let heardCount = 0;
  /** Who uses the ear; what was started for an earlier user must not come through later. */
  let turn = 0;
  let soundFrom: 'none' | 'microphone' | 'file' | 'practice' = 'none';

  const tellContext = (): void =>
    ear.setContext({
      a4: ports.a4.value,
      expected: readout.expected.value,
      notes: panNotes.value,
    });
  const readout = createReadoutModel(tellContext);
  const { phase, expected, octaves, expect, correctOctave } = readout;

  microphone.onState((state) => {
    microphoneState.value = state;
    const isOpen = isMicrophoneOpen(state);
    light.keepOn(isOpen);
    if (soundFrom !== 'microphone') return;
    if (!isOpen) readout.endListening();
    else if (phase.value.kind === 'idle') readout.startAnew();
  });
  ear.onState((state) => {
    earState.value = state;
    // Its port died with the analysis: "listening" would not be true any more.
    if (state.kind === 'failed' && soundFrom === 'microphone') void microphone.stop();
  });
  ear.onHeard((heard) => {
    const counts = phase.value.kind !== 'idle' && heard.kind === 'strike' && !heard.provisional;
    if (counts) heardCount++;
    readout.hear(heard);
  });

  return {
    phase,
    microphone: microphoneState,
    ear: earState,
    expected,
    octaves,
    expect,
    correctOctave,
    fileNotice,
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
      readout.clear();
      await microphone.start();
    },
    async stop() {
      turn++;
      soundFrom = 'none';
      panNotes.value = null;
      readout.expectAny();
      fileNotice.value = { kind: 'none' };
      readout.clear();
      await microphone.stop();
    },
    async openFile(file) {
      const mine = ++turn;
      soundFrom = 'file';
      panNotes.value = null;
      readout.clear();
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
      readout.startAnew();
      ear.begin(sampleRate);
      for (const block of blocksOf(samples)) ear.feed(block);
      await ear.finish();
      if (mine !== turn) return;
      readout.endListening();
      fileNotice.value = { kind: 'read', heard: heardCount, resampled };
    },
    async beginPractice(source) {
      const mine = ++turn;
      soundFrom = 'practice';
      await microphone.stop();
      if (mine !== turn) return;
      fileNotice.value = { kind: 'none' };
      panNotes.value = notesOf(source.layout);
      readout.expectAny();
      tellContext();
      ear.begin(practiceRate);
      readout.startAnew();
    },
    strikePractice(source, note) {
      // It is known which note is struck: an answer to "which note?" must not refuse the others.
      if (expected.value !== null && expected.value !== note) {
        readout.expectAny();
        tellContext();
      }
      const sound = source.strike(note, practiceLoudness, practiceRate);
      speaker.play(sound.slice(), practiceRate);
      for (const block of blocksOf(sound)) ear.feed(block);
    },
    retune() {
      tellContext();
      if (phase.value.kind !== 'idle') readout.startAnew();
    },
  };
}
