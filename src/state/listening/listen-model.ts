// Listening: one path for the microphone, a sound file and the practice pan.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { type CutSound, cutFrom, cutSeconds } from '../../domain/measurement/cut-sound';
import type { Heard, KnownNote, Strike } from '../../domain/measurement/strike';
import type { EarState } from '../../domain/ports/ear-port';
import type { MicrophoneState } from '../../domain/ports/microphone-ports';
import type { ScreenLight } from '../../domain/ports/phone-ports';
import type { PracticeSource, SoundFiles, Speaker } from '../../domain/ports/sound-ports';
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import type { Taking } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';
import { createEarUse, type EarUsePorts } from './ear-use';
import { createFileListening, type FileNotice } from './file-listening';
import type { HeardPan } from './heard-context';
import { createPracticeListening } from './practice-listening';
import type { ReadoutModel } from './readout-model';
import type { LastStrike } from './taking-now';

export interface ListenPorts extends EarUsePorts {
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
  readonly light: ScreenLight;
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
  /** Everything heard that counts, after the readout has taken it. */
  onHeard(listener: (heard: Heard) => void): Unsubscribe;
  /** The newest settled strike of this listening, also after it has ended; null before one is heard. */
  readonly last: ReadonlySignal<LastStrike | null>;
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

const isMicrophoneOpen = ({ kind }: MicrophoneState): boolean =>
  kind === 'priming' || kind === 'listening' || kind === 'silent';

/** The model of everything that is heard; connect it once. */
export function createListenModel(ports: ListenPorts): ListenModel {
  const { ear, light } = ports;
  const use = createEarUse(ports);
  const { context, deaf, readout, taking, user, microphone } = use;
  const file = createFileListening(use, ports.soundFiles);
  const practice = createPracticeListening(use, ports.speaker);
  const earState = signal<EarState>({ kind: 'ready' });
  const isOnPan = computed(
    () => context.pan.value !== null && (context.pan.value.whose ?? 'round') === 'round',
  );
  const listeners = new Set<(heard: Heard) => void>();
  const { phase, expected, octaves, expect, correctOctave } = readout;

  use.onMicrophone((state) => {
    const isOpen = isMicrophoneOpen(state);
    // What was refused or lost is free for another window again.
    if (!isOpen && state.kind !== 'asking') ports.microphoneTurn.release();
    light.keepOn(isOpen);
    if (taking.from.value !== 'microphone') return;
    if (!isOpen) readout.endListening();
    else if (phase.value.kind === 'idle') readout.startAnew();
  });
  ear.onState((state) => {
    earState.value = state;
    // Its port died with the analysis: "listening" would not be true any more.
    if (state.kind === 'failed' && taking.from.value === 'microphone') void ports.microphone.stop();
  });
  ear.onHeard((heard) => {
    if (deaf.isDeafTo(heard)) return;
    if (heard.kind === 'refused' && heard.reason === 'lost-audio') taking.lost();
    const isAwaited = phase.value.kind !== 'idle';
    if (isAwaited && heard.kind === 'strike' && !heard.provisional) {
      file.count();
      taking.last.value = { strike: heard, from: taking.from.value, isOnPan: isOnPan.value };
    }
    readout.hear(heard);
    // The analysis may still finish a strike after "Stop".
    if (isAwaited) for (const listener of listeners) listener(heard);
  });

  const openMicrophone = async (): Promise<void> => {
    file.forget();
    await use.openMicrophone();
  };

  return {
    phase,
    microphone,
    ear: earState,
    expected,
    octaves,
    expect,
    correctOctave,
    fileNotice: file.notice,
    isBusy: computed(
      () =>
        file.notice.value.kind === 'reading' ||
        context.practice.value !== null ||
        !['idle', 'denied', 'absent', 'other-window', 'failed'].includes(microphone.value.kind),
    ),
    taking: taking.taking,
    last: taking.last,
    async listen() {
      use.leavePan();
      await openMicrophone();
    },
    async listenTo(pan, expected) {
      use.leavePan();
      context.pan.value = pan;
      if (expected === null) readout.expectAny();
      else readout.expect(expected);
      await openMicrophone();
    },
    isListening: computed(
      () => microphone.value.kind === 'asking' || isMicrophoneOpen(microphone.value),
    ),
    isOnPan,
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
    soundOf: ({ at }) => ear.cut(cutFrom(at), cutSeconds),
    ignoreDuring: (sound) => deaf.during(sound),
    async stop() {
      use.leavePan();
      user.drop();
      taking.from.value = 'none';
      context.practice.value = null;
      readout.expectAny();
      file.forget();
      readout.clear();
      await use.closeMicrophone();
    },
    openFile: file.open,
    async beginPractice(source) {
      if (await practice.begin(source)) file.forget();
    },
    strikePractice: practice.strike,
    retune() {
      context.tell();
      if (phase.value.kind !== 'idle') readout.startAnew();
    },
  };
}
