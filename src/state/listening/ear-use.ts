// What every way of listening shares. The ear has one user at a time: the microphone, a sound file or a practice pan.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Ear } from '../../domain/ports/ear-port';
import type {
  Microphone,
  MicrophoneState,
  MicrophoneTurn,
} from '../../domain/ports/microphone-ports';
import type { Hertz } from '../../domain/tuning/units';
import { createLatest, type Latest } from '../asking/latest';
import { createDeafMoments, type DeafMoments, type Pause } from './deaf-moments';
import { createHeardContext, type HeardContext } from './heard-context';
import { createReadoutModel, type ReadoutModel } from './readout-model';
import { createTakingNow, type TakingNow } from './taking-now';

export interface EarUsePorts {
  readonly microphone: Microphone;
  readonly microphoneTurn: MicrophoneTurn;
  readonly ear: Ear;
  readonly a4: ReadonlySignal<Hertz>;
  /** Resolves after so many seconds. */
  readonly pause: Pause;
}

export interface EarUse {
  readonly ear: Ear;
  readonly context: HeardContext;
  readonly deaf: DeafMoments;
  readonly readout: ReadoutModel;
  readonly taking: TakingNow;
  /** Who uses the ear; what was started for an earlier user must not come through later. */
  readonly user: Latest;
  readonly microphone: ReadonlySignal<MicrophoneState>;
  /** `listener` is told every state of the microphone, once it can be read here. */
  onMicrophone(listener: (state: MicrophoneState) => void): void;
  openMicrophone(): Promise<void>;
  closeMicrophone(): Promise<void>;
  /** A pan that was listened to before is not listened to any more. */
  leavePan(): void;
}

/** Sample rate of sound that is made here, Hz (chosen, the usual one). */
export const practiceRate = 48000;

export function createEarUse({ microphone, microphoneTurn, ear, a4, pause }: EarUsePorts): EarUse {
  const state = signal<MicrophoneState>({ kind: 'idle' });
  const taking = createTakingNow(state, practiceRate);
  const user = createLatest();
  const context = createHeardContext(ear, a4, () => readout.expected.value);
  const deaf = createDeafMoments(pause);
  const readout = createReadoutModel(context.tell);
  return {
    ear,
    context,
    deaf,
    readout,
    taking,
    user,
    microphone: state,
    onMicrophone(listener) {
      microphone.onState((now) => {
        state.value = now;
        listener(now);
      });
    },
    async openMicrophone() {
      const isLatest = user.begin();
      taking.from.value = 'microphone';
      taking.begin();
      context.practice.value = null;
      context.tell();
      // "Strike any note" waits until the microphone is open.
      readout.clear();
      const whose = await microphoneTurn.take();
      if (!isLatest()) return;
      if (whose === 'ours') await microphone.start();
      else state.value = { kind: 'other-window' };
    },
    /** Also while it is only being asked for: it then has no state to report, and the turn would be kept for ever. */
    async closeMicrophone() {
      await microphone.stop();
      if (taking.from.value !== 'microphone') microphoneTurn.release();
    },
    leavePan() {
      context.pan.value = null;
      deaf.hearAgain();
    },
  };
}
