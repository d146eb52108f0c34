// One held tone to tune by ear to. Nothing is measured while it sounds.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { TonePlayer } from '../../domain/ports/sound-ports';
import type { Hertz } from '../../domain/tuning/units';
import { createLatest } from '../asking/latest';
import type { ListenModel } from './listen-model';

export interface TargetTone {
  /** What sounds, Hz; null: silence. */
  readonly sounding: ReadonlySignal<Hertz | null>;
  /** Holds this tone, or ends it if it is the one that sounds. Call inside a tap. */
  toggle(hz: Hertz): Promise<void>;
  stop(): void;
}

export function createTargetTone({
  listen,
  player,
}: {
  readonly listen: Pick<ListenModel, 'isListening' | 'stop'>;
  readonly player: Pick<TonePlayer, 'hold' | 'stop'>;
}): TargetTone {
  const sounding = signal<Hertz | null>(null);
  const latest = createLatest();
  const stop = (): void => {
    latest.drop();
    if (sounding.value !== null) player.stop();
    sounding.value = null;
  };
  return {
    sounding,
    async toggle(hz) {
      const wasOn = sounding.value === hz;
      stop();
      if (wasOn) return;
      const isLatest = latest.begin();
      if (listen.isListening.value) await listen.stop();
      if (!isLatest()) return;
      sounding.value = hz;
      await player.hold(hz);
      if (isLatest()) sounding.value = null;
    },
    stop,
  };
}
