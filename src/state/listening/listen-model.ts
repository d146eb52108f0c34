// Listening: one path for the microphone, a sound file and the practice pan.
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { CutSound } from '../../domain/measurement/cut-sound';
import type { Heard, KnownNote, Strike } from '../../domain/measurement/strike';
import { notesOf } from '../../domain/pans/layout';
import type { Ear, EarState } from '../../domain/ports/ear-port';
import type {
  Microphone,
  MicrophoneState,
  MicrophoneTurn,
} from '../../domain/ports/microphone-ports';
import type { ScreenLight } from '../../domain/ports/phone-ports';
import type { PracticeSource, SoundFiles, Speaker } from '../../domain/ports/sound-ports';
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import type { Taking } from '../../domain/records/rack-records';
import { type Hertz, type MidiNote, seconds } from '../../domain/tuning/units';
import { createDeafMoments, type Pause } from './deaf-moments';
import { createHeardContext, type HeardPan } from './heard-context';
import { createReadoutModel, type ReadoutModel } from './readout-model';
import { createTakingNow } from './taking-now';

/** What is kept of a strike. */
const beforeStrike = 0.03;
const soundLength = seconds(1);
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
  readonly microphoneTurn: MicrophoneTurn;
  readonly ear: Ear;
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
  readonly light: ScreenLight;
  readonly a4: ReadonlySignal<Hertz>;
  /** Resolves after so many seconds. */
  readonly pause: Pause;
}

export interface ListenModel
  extends Pick<ReadoutModel, 'phase' | 'expected' | 'octaves' | 'expect' | 'correctOctave'> {
  readonly microphone: ReadonlySignal<MicrophoneState>;
  readonly ear: ReadonlySignal<EarState>;
  readonly fileNotice: ReadonlySignal<FileNotice>;
  /** Something is being measured: not the moment for an update. */
  readonly isBusy: ReadonlySignal<boolean>;
  listen(): Promise<void>;
  /** Opens the microphone for one pan; `expected` is the note to be struck, null for any. Call inside a tap. */
  listenTo(pan: HeardPan, expected: MidiNote | null): Promise<void>;
  /** This window has the microphone, or asks for it. */
  readonly isListening: ReadonlySignal<boolean>;
  /** One pan is listened to, for a round. */
  readonly isOnPan: ReadonlySignal<boolean>;
  /** Any note may be struck. */
  expectAny(): void;
  /** What is known of the pan that is listened to has grown. */
  knowNow(known: readonly KnownNote[]): void;
  /** Everything that counts, after the readout has taken it. */
  onHeard(listener: (heard: Heard) => void): Unsubscribe;
  /** The sound of a strike that has just been heard, 1 s from shortly before it; null if it is lost. */
  soundOf(strike: Strike): Promise<CutSound | null>;
  /** While `sound` lasts and a moment longer nothing that is heard counts: it is the phone's own voice. */
  ignoreDuring(sound: Promise<void>): Promise<void>;
  /** Where the sound of the readings comes from, and how it came here. */
  readonly taking: ReadonlySignal<Omit<Taking, 'appVersion'>>;
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
  const listeners = new Set<(heard: Heard) => void>();
  const takingNow = createTakingNow(microphoneState, practiceRate);
  let heardCount = 0;
  /** Who uses the ear; what was started for an earlier user must not come through later. */
  let turn = 0;

  const context = createHeardContext(ear, ports.a4, () => expected.value);
  const deaf = createDeafMoments(ports.pause);
  const readout = createReadoutModel(context.tell);
  const { phase, expected, octaves, expect, correctOctave } = readout;

  microphone.onState((state) => {
    microphoneState.value = state;
    const isOpen = isMicrophoneOpen(state);
    // What was refused or lost is free for another window again.
    if (!isOpen && state.kind !== 'asking') ports.microphoneTurn.release();
    light.keepOn(isOpen);
    if (takingNow.from.value !== 'microphone') return;
    if (!isOpen) readout.endListening();
    else if (phase.value.kind === 'idle') readout.startAnew();
  });
  ear.onState((state) => {
    earState.value = state;
    // Its port died with the analysis: "listening" would not be true any more.
    if (state.kind === 'failed' && takingNow.from.value === 'microphone') void microphone.stop();
  });
  ear.onHeard((heard) => {
    if (deaf.isDeafTo(heard)) return;
    if (heard.kind === 'refused' && heard.reason === 'lost-audio') takingNow.lost();
    const counts = phase.value.kind !== 'idle' && heard.kind === 'strike' && !heard.provisional;
    if (counts) heardCount++;
    const isAwaited = phase.value.kind !== 'idle';
    readout.hear(heard);
    // The analysis may still finish a strike after "Stop".
    if (isAwaited) for (const listener of listeners) listener(heard);
  });

  /** A pan that was listened to before is not listened to any more. */
  const leavePan = (): void => {
    context.pan.value = null;
    deaf.hearAgain();
  };
  const openMicrophone = async (): Promise<void> => {
    turn++;
    takingNow.from.value = 'microphone';
    takingNow.begin();
    fileNotice.value = { kind: 'none' };
    context.practice.value = null;
    context.tell();
    // "Strike any note" waits until the microphone is open.
    readout.clear();
    const mine = turn;
    const whose = await ports.microphoneTurn.take();
    if (mine !== turn) return;
    if (whose === 'ours') await microphone.start();
    else microphoneState.value = { kind: 'other-window' };
  };
  /** Also while it is only being asked for: then it has no state to tell of, and the turn would be kept for ever. */
  const closeMicrophone = async (): Promise<void> => {
    await microphone.stop();
    if (takingNow.from.value !== 'microphone') ports.microphoneTurn.release();
  };

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
        context.practice.value !== null ||
        !['idle', 'denied', 'absent', 'other-window', 'failed'].includes(
          microphoneState.value.kind,
        ),
    ),
    taking: takingNow.taking,
    async listen() {
      leavePan();
      await openMicrophone();
    },
    async listenTo(pan, expected) {
      leavePan();
      context.pan.value = pan;
      if (expected === null) readout.expectAny();
      else readout.expect(expected);
      await openMicrophone();
    },
    isListening: computed(
      () => microphoneState.value.kind === 'asking' || isMicrophoneOpen(microphoneState.value),
    ),
    isOnPan: computed(
      () => context.pan.value !== null && (context.pan.value.whose ?? 'round') === 'round',
    ),
    expectAny() {
      if (expected.value === null) return;
      readout.expectAny();
      context.tell();
    },
    knowNow: context.know,
    onHeard(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    soundOf: ({ at }) => ear.cut(seconds(Math.max(0, at - beforeStrike)), soundLength),
    ignoreDuring: (sound) => deaf.during(sound),
    async stop() {
      leavePan();
      turn++;
      takingNow.from.value = 'none';
      context.practice.value = null;
      readout.expectAny();
      fileNotice.value = { kind: 'none' };
      readout.clear();
      await closeMicrophone();
    },
    async openFile(file) {
      const mine = ++turn;
      leavePan();
      takingNow.from.value = 'file';
      context.practice.value = null;
      readout.clear();
      fileNotice.value = { kind: 'reading' };
      await closeMicrophone();
      const result = await soundFiles.open(file);
      if (mine !== turn) return;
      if (result.kind === 'unreadable') {
        fileNotice.value = result;
        return;
      }
      const { samples, sampleRate, resampled } = result.sound;
      heardCount = 0;
      takingNow.begin(sampleRate);
      context.tell();
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
      leavePan();
      takingNow.from.value = 'practice';
      await closeMicrophone();
      if (mine !== turn) return;
      fileNotice.value = { kind: 'none' };
      context.practice.value = notesOf(source.layout);
      readout.expectAny();
      context.tell();
      takingNow.begin(practiceRate);
      ear.begin(practiceRate);
      readout.startAnew();
    },
    strikePractice(source, note) {
      // It is known which note is struck: an answer to "which note?" must not refuse the others.
      if (expected.value !== null && expected.value !== note) {
        readout.expectAny();
        context.tell();
      }
      const sound = source.strike(note, practiceLoudness, practiceRate);
      speaker.play(sound.slice(), practiceRate);
      for (const block of blocksOf(sound)) ear.feed(block);
    },
    retune() {
      context.tell();
      if (phase.value.kind !== 'idle') readout.startAnew();
    },
  };
}
