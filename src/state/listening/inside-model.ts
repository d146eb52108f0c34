// Looking inside the newest strike: it is taken apart once, then each part can be heard. Never while listening.
import { type ReadonlySignal, signal } from '@preact/signals';
import { cutFrom } from '../../domain/measurement/cut-sound';
import type { Strike } from '../../domain/measurement/strike';
import type {
  PartName,
  PartSound,
  Slower,
  StrikeInside,
  TakeApart,
} from '../../domain/measurement/strike-inside';
import type { TonePlayer } from '../../domain/ports/sound-ports';
import { seconds } from '../../domain/tuning/units';
import { createLatest } from '../asking/latest';
import type { ListenModel } from './listen-model';
import type { SoundFrom } from './taking-now';

export type InsideView =
  | { readonly kind: 'opening' }
  /** `gone`: there was a strike, its sound is lost. */
  | { readonly kind: 'none' | 'gone' }
  | {
      readonly kind: 'open';
      readonly strike: Strike;
      readonly from: SoundFrom;
      readonly isOnPan: boolean;
      readonly inside: StrikeInside;
    };

export interface Playing {
  readonly part: PartName;
  readonly which: PartSound;
}

export interface InsideModel {
  readonly view: ReadonlySignal<InsideView>;
  readonly playing: ReadonlySignal<Playing | null>;
  /** Takes the newest strike apart. */
  open(): Promise<void>;
  /** Where the microphone was open it is closed first; one sound at a time. */
  play(part: PartName, which: PartSound, slower: Slower): Promise<void>;
  /** Silence. */
  stop(): void;
  /** Silence, and on with the microphone by `begin`: for going back. Call inside a tap. */
  listenAgain(begin: () => Promise<void>): Promise<void>;
}

export function createInsideModel({
  listen,
  player,
  takeApart,
}: {
  readonly listen: Pick<ListenModel, 'last' | 'soundOf' | 'isListening' | 'stop' | 'ignoreDuring'>;
  readonly player: TonePlayer;
  readonly takeApart: () => Promise<TakeApart>;
}): InsideModel {
  const view = signal<InsideView>({ kind: 'opening' });
  const playing = signal<Playing | null>(null);
  const latest = createLatest();
  const sounds = createLatest();
  const silence = (): void => {
    sounds.drop();
    player.stop();
    playing.value = null;
  };
  return {
    view,
    playing,
    async open() {
      const isLatest = latest.begin();
      const last = listen.last.value;
      const strike = last?.strike ?? null;
      // Coming back to the same strike: it is there already.
      if (view.value.kind === 'open' && view.value.strike === strike) return;
      view.value = strike ? { kind: 'opening' } : { kind: 'none' };
      if (!last || !strike) return;
      const [sound, take] = await Promise.all([
        listen.soundOf(strike),
        takeApart().catch(() => null),
      ]);
      if (!isLatest()) return;
      view.value =
        sound && take
          ? {
              kind: 'open',
              ...last,
              inside: take(strike, sound, seconds(strike.at - cutFrom(strike.at))),
            }
          : { kind: 'gone' };
    },
    async play(part, which, slower) {
      const shown = view.value;
      if (shown.kind !== 'open') return;
      silence();
      const isLatest = sounds.begin();
      if (listen.isListening.value) await listen.stop();
      if (!isLatest()) return;
      playing.value = { part, which };
      await player.play(shown.inside.soundOf(part, which, slower));
      if (isLatest()) playing.value = null;
    },
    stop: silence,
    async listenAgain(begin) {
      silence();
      const begun = begin();
      // The room may still hold the end of what was played.
      void listen.ignoreDuring(begun);
      await begun;
    },
  };
}
