// Where the sound comes from at this moment, as it is kept with each reading.
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Strike } from '../../domain/measurement/strike';
import type { MicrophoneState } from '../../domain/ports/microphone-ports';
import type { Taking } from '../../domain/records/rack-records';

export type SoundFrom = 'none' | 'microphone' | 'file' | 'practice';

/** A settled strike and where its sound came from. */
export interface LastStrike {
  readonly strike: Strike;
  readonly from: SoundFrom;
  /** It belongs to a round. */
  readonly isOnPan: boolean;
}

export interface TakingNow {
  /** The newest settled strike of this listening, for who wants to look inside it. */
  readonly last: Signal<LastStrike | null>;
  readonly from: Signal<SoundFrom>;
  readonly taking: ReadonlySignal<Omit<Taking, 'appVersion'>>;
  /** Sound begins to come in: nothing of it is lost yet. `rate`: of a file or of the practice pan; the microphone says its own. */
  begin(rate?: number): void;
  /** A stretch of sound was lost. */
  lost(): void;
}

export function createTakingNow(
  microphone: ReadonlySignal<MicrophoneState>,
  usualRate: number,
): TakingNow {
  const from = signal<SoundFrom>('none');
  const rate = signal(usualRate);
  const gaps = signal(0);
  const last = signal<LastStrike | null>(null);
  return {
    last,
    from,
    taking: computed(() => takingOf(from.value, microphone.value, rate.value, gaps.value)),
    begin(newRate = rate.value) {
      rate.value = newRate;
      gaps.value = 0;
      last.value = null;
    },
    lost() {
      gaps.value++;
    },
  };
}

function takingOf(
  from: SoundFrom,
  microphone: MicrophoneState,
  rate: number,
  gaps: number,
): Omit<Taking, 'appVersion'> {
  const isOpen = microphone.kind === 'listening';
  const isMicrophone = from === 'microphone';
  return {
    source: from === 'none' ? 'microphone' : from,
    sampleRate: isMicrophone && isOpen ? microphone.sampleRate : rate,
    processing: isMicrophone && isOpen ? microphone.processing : [],
    gaps,
  };
}
