// The voice of the bench: says what a reading came to, once, when it has settled.
import { effect, untracked } from '@preact/signals';
import type { Announcer } from '../../domain/ports/sound-ports';
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import { type Reading, strikesToSettle } from '../../domain/reading/reading';
import type { SettingsModel } from '../settings/settings-model';
import type { ListenModel } from './listen-model';
import type { ReadoutPhase } from './readout-phase';

export interface SpokenVerdictPorts {
  readonly announcer: Announcer;
  readonly listen: Pick<ListenModel, 'ignoreDuring'>;
  readonly settings: Pick<SettingsModel, 'hands'>;
}

/**
 * Speaks `wordsOf` a reading as soon as `phase` shows it settled, and not again before a new reading has begun.
 * Nothing that is heard meanwhile counts. A reading that is settled at the beginning is not said: it is old.
 */
export function speakVerdicts(
  { announcer, listen, settings }: SpokenVerdictPorts,
  phase: { readonly value: ReadoutPhase },
  wordsOf: (reading: Reading) => string,
): Unsubscribe {
  // What is shown first may have been read yesterday.
  let isSaid = true;
  const stop = effect(() => {
    const now = phase.value;
    untracked(() => {
      if (isNewReading(now)) isSaid = false;
      if (now.kind !== 'settled' || isSaid) return;
      isSaid = true;
      if (!settings.hands.value.speaksVerdict || !announcer.hasVoice()) return;
      void listen.ignoreDuring(announcer.say(wordsOf(now.reading)));
    });
  });
  return () => {
    stop();
    announcer.hush();
  };
}

/** True while too few strikes are in for a reading: the next settled one is another. */
const isNewReading = (phase: ReadoutPhase): boolean =>
  phase.kind === 'heard' && phase.reading.strikes.length < strikesToSettle;
