// Stand-ins for everything the listening model needs from the phone.
import { signal } from '@preact/signals';
import type { Heard, ListeningContext } from '../../src/domain/measurement/strike';
import type { Ear, EarState } from '../../src/domain/ports/ear-port';
import type { Microphone, MicrophoneState } from '../../src/domain/ports/microphone-ports';
import type { OpenSoundResult } from '../../src/domain/ports/sound-ports';
import { hertz } from '../../src/domain/tuning/units';
import type { ListenPorts } from '../../src/state/listening/listen-model';

export function fakePorts() {
  const contexts: ListeningContext[] = [];
  const fed: number[] = [];
  const rates: number[] = [];
  const light: boolean[] = [];
  const a4 = signal(hertz(440));
  const file: { result: OpenSoundResult; during: readonly Heard[] } = {
    result: { kind: 'unreadable', why: 'not-sound' },
    during: [],
  };
  let hear: (heard: Heard) => void = () => undefined;
  let tell: (state: MicrophoneState) => void = () => undefined;
  let tellEar: (state: EarState) => void = () => undefined;
  const ear: Ear = {
    onHeard(listener) {
      hear = listener;
      return () => undefined;
    },
    onLevel: () => () => undefined,
    onState(listener) {
      tellEar = listener;
      return () => undefined;
    },
    setContext: (context) => contexts.push(context),
    begin: (sampleRate) => rates.push(sampleRate),
    feed: (samples) => fed.push(samples.length),
    cut: async (_from, length) => ({ samples: new Float32Array(8000 * length), sampleRate: 8000 }),
    async finish() {
      for (const heard of file.during) hear(heard);
    },
  };
  const microphone: Microphone = {
    onState(listener) {
      tell = listener;
      return () => undefined;
    },
    start: async () => tell({ kind: 'asking' }),
    stop: async () => tell({ kind: 'idle' }),
  };
  const turn: { answer: 'ours' | 'other-window'; released: number } = {
    answer: 'ours',
    released: 0,
  };
  const ports: ListenPorts = {
    microphone,
    microphoneTurn: {
      take: async () => turn.answer,
      release: () => {
        turn.released++;
      },
    },
    ear,
    soundFiles: { open: async () => file.result },
    speaker: { play: () => undefined },
    light: { keepOn: (on) => light.push(on) },
    a4,
    pause: async () => undefined,
  };
  return {
    ports,
    contexts,
    fed,
    rates,
    light,
    turn,
    file,
    a4,
    hear: (heard: Heard) => hear(heard),
    earIs: (state: EarState) => tellEar(state),
    microphoneIs: (state: MicrophoneState) => tell(state),
  };
}

export const anyFile = { arrayBuffer: async () => new ArrayBuffer(0) };
