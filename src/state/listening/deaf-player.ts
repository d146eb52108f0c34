// Plays sounds that are never measured: the microphone that opens while one rings ends it, and hears nothing of it.
import { effect, signal, untracked } from '@preact/signals';
import type { TonePlayer } from '../../domain/ports/sound-ports';
import type { Pause } from './deaf-moments';
import type { ListenModel } from './listen-model';

/** The end of a sound leaves a loudspeaker without a wire this much later, s (common practice, no source). */
const speakerLag = 0.5;

export function createDeafPlayer({
  listen,
  player,
  pause,
}: {
  readonly listen: Pick<ListenModel, 'isListening' | 'microphone' | 'ignoreDuring'>;
  readonly player: TonePlayer;
  readonly pause: Pause;
}): TonePlayer {
  /** Sounds that may still be in the room. */
  const ringing = signal(0);
  const ring = async (sound: Promise<void>): Promise<void> => {
    ringing.value++;
    await sound;
    void pause(speakerLag).then(() => ringing.value--);
  };
  effect(() => {
    if (!listen.isListening.value) return;
    untracked(() => {
      if (ringing.value === 0) return;
      player.stop();
      void listen.ignoreDuring(silence());
    });
  });
  /** Resolves when nothing rings any more and the microphone is on, or not wanted any more. */
  const silence = (): Promise<void> =>
    new Promise((resolve) => {
      const end = effect(() => {
        const isOpening = ['asking', 'priming'].includes(listen.microphone.value.kind);
        if (ringing.value > 0 || isOpening) return;
        // An effect that runs at once has no end yet.
        void Promise.resolve().then(() => end());
        resolve();
      });
    });
  return {
    play: (sound) => ring(player.play(sound)),
    hold: (hz) => ring(player.hold(hz)),
    stop: () => player.stop(),
  };
}
