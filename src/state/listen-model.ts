// Listening: one path for the microphone, a sound file and the practice pan.
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { CutSound } from '../domain/measurement/cut-sound';
import type { Heard, KnownNote, Strike } from '../domain/measurement/strike';
import { notesOf } from '../domain/pans/layout';
import type { Ear, EarState } from '../domain/ports/ear-port';
import type { Microphone, MicrophoneState, MicrophoneTurn } from '../domain/ports/microphone-ports';
import type { ScreenLight } from '../domain/ports/phone-ports';
import type { PracticeSource, SoundFiles, Speaker } from '../domain/ports/sound-ports';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import type { Taking } from '../domain/records/rack-records';
import { type Hertz, type MidiNote, seconds } from '../domain/tuning/units';
import { createDeafMoments, type Pause } from './deaf-moments';
import { createReadoutModel, type ReadoutModel } from './readout-model';
import { type SoundFrom, takingOf } from './taking-now';

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

/** The pan that is listened to: only its notes are heard, and what is known of them helps the ear. */
export interface HeardPan {
  readonly notes: readonly MidiNote[];
  readonly known: readonly KnownNote[];
  /** A4 it is judged against. */
  readonly a4: Hertz;
  /** For whom it is heard: a round that was left must not take the strikes of the bench. A round unless told. */
  readonly whose?: 'round' | 'bench' | 'knock-check';
  /** It is looked over after a knock: a choked note counts as one (see `ListeningContext`). */
  readonly mayBeChoked?: boolean;
}

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
  const panNotes = signal<readonly MidiNote[] | null>(null);
  const heardPan = signal<HeardPan | null>(null);
  const gaps = signal(0);
  const listeners = new Set<(heard: Heard) => void>();
  const fileRate = signal(practiceRate);
  const soundFrom = signal<SoundFrom>('none');
  let heardCount = 0;
  /** Who uses the ear; what was started for an earlier user must not come through later. */
  let turn = 0;

  const tellContext = (): void =>
    ear.setContext({
      a4: heardPan.value?.a4 ?? ports.a4.value,
      expected: readout.expected.value,
      notes: heardPan.value?.notes ?? panNotes.value,
      ...(heardPan.value ? { known: heardPan.value.known } : {}),
      ...(heardPan.value?.mayBeChoked ? { mayBeChoked: true } : {}),
    });
  const deaf = createDeafMoments(ports.pause);
  const readout = createReadoutModel(tellContext);
  const { phase, expected, octaves, expect, correctOctave } = readout;

  microphone.onState((state) => {
    microphoneState.value = state;
    const isOpen = isMicrophoneOpen(state);
    // What was refused or lost is free for another window again.
    if (!isOpen && state.kind !== 'asking') ports.microphoneTurn.release();
    light.keepOn(isOpen);
    if (soundFrom.value !== 'microphone') return;
    if (!isOpen) readout.endListening();
    else if (phase.value.kind === 'idle') readout.startAnew();
  });
  ear.onState((state) => {
    earState.value = state;
    // Its port died with the analysis: "listening" would not be true any more.
    if (state.kind === 'failed' && soundFrom.value === 'microphone') void microphone.stop();
  });
  ear.onHeard((heard) => {
    if (deaf.isDeafTo(heard)) return;
    if (heard.kind === 'refused' && heard.reason === 'lost-audio') gaps.value++;
    const counts = phase.value.kind !== 'idle' && heard.kind === 'strike' && !heard.provisional;
    if (counts) heardCount++;
    const isAwaited = phase.value.kind !== 'idle';
    readout.hear(heard);
    // The analysis may still finish a strike after "Stop".
    if (isAwaited) for (const listener of listeners) listener(heard);
  });

  /** A pan that was listened to before is not listened to any more. */
  const leavePan = (): void => {
    heardPan.value = null;
    deaf.hearAgain();
  };
  const openMicrophone = async (): Promise<void> => {
    turn++;
    soundFrom.value = 'microphone';
    gaps.value = 0;
    fileNotice.value = { kind: 'none' };
    panNotes.value = null;
    tellContext();
    // "Strike any note" waits until the microphone is open.
    readout.clear();
    const mine = turn;
    const whose = await ports.microphoneTurn.take();
    if (mine !== turn) return;
    if (whose === 'ours') await microphone.start();
    else microphoneState.value = { kind: 'other-window' };
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
        panNotes.value !== null ||
        !['idle', 'denied', 'absent', 'other-window', 'failed'].includes(
          microphoneState.value.kind,
        ),
    ),
    taking: computed(() =>
      takingOf(soundFrom.value, microphoneState.value, fileRate.value, gaps.value),
    ),
    async listen() {
      leavePan();
      await openMicrophone();
    },
    async listenTo(pan, expected) {
      leavePan();
      heardPan.value = pan;
      if (expected === null) readout.expectAny();
      else readout.expect(expected);
      await openMicrophone();
    },
    isListening: computed(
      () => microphoneState.value.kind === 'asking' || isMicrophoneOpen(microphoneState.value),
    ),
    isOnPan: computed(
      () => heardPan.value !== null && (heardPan.value.whose ?? 'round') === 'round',
    ),
    expectAny() {
      if (expected.value === null) return;
      readout.expectAny();
      tellContext();
    },
    knowNow(known) {
      if (!heardPan.value) return;
      heardPan.value = { ...heardPan.value, known };
      tellContext();
    },
    onHeard(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    soundOf: ({ at }) => ear.cut(seconds(Math.max(0, at - beforeStrike)), soundLength),
    ignoreDuring: (sound) => deaf.during(sound),
    async stop() {
      leavePan();
      turn++;
      soundFrom.value = 'none';
      panNotes.value = null;
      readout.expectAny();
      fileNotice.value = { kind: 'none' };
      readout.clear();
      await microphone.stop();
    },
    async openFile(file) {
      const mine = ++turn;
      leavePan();
      soundFrom.value = 'file';
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
      fileRate.value = sampleRate;
      gaps.value = 0;
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
      leavePan();
      soundFrom.value = 'practice';
      await microphone.stop();
      if (mine !== turn) return;
      fileNotice.value = { kind: 'none' };
      panNotes.value = notesOf(source.layout);
      readout.expectAny();
      tellContext();
      fileRate.value = practiceRate;
      gaps.value = 0;
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
