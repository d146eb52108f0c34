// The sign that a note is settled, for who does not look at the screen: a buzz or a tone, once for each reading.
import { effect, untracked } from '@preact/signals';
import type { Nudge } from '../../domain/ports/sound-ports';
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import { strikesToSettle } from '../../domain/reading/reading';
import type { SettingsModel } from '../settings/settings-model';
import type { ListenModel } from './listen-model';
import type { ReadoutPhase } from './readout-phase';

export interface SettledSignPorts {
  readonly nudge: Nudge;
  readonly listen: Pick<ListenModel, 'ignoreDuring' | 'isListening'>;
  readonly settings: Pick<SettingsModel, 'hands'>;
  /** A voice or beeps say it as well: no tone then. */
  readonly isAnnounced: () => boolean;
}

/**
 * Gives the sign as soon as `phase` shows a settled reading, and not again before another has begun. It comes after the
 * last word on a strike, never while one is measured, and nothing that is heard meanwhile counts. Not for a pan that
 * the phone plays itself: there is no microphone then. A reading that is settled at the beginning is old.
 */
export function signSettled(
  { nudge, listen, settings, isAnnounced }: SettledSignPorts,
  phase: { readonly value: ReadoutPhase },
): Unsubscribe {
  let isSigned = true;
  return effect(() => {
    const now = phase.value;
    untracked(() => {
      // As in `speakVerdicts`, of which the first moment of the app has no need.
      const { kind } = now;
      if (kind === 'heard' && now.reading.strikes.length < strikesToSettle) isSigned = false;
      if (kind !== 'settled' || isSigned) return;
      // After the first look at a strike that strike is still measured.
      if (now.reading.heard.some(({ provisional }) => provisional)) return;
      isSigned = true;
      const sign = settings.hands.value.settledSign;
      if (!listen.isListening.value) return;
      if (sign === 'buzz') void listen.ignoreDuring(nudge.buzz());
      if (sign === 'tone' && !isAnnounced()) void listen.ignoreDuring(nudge.tone());
    });
  });
}
