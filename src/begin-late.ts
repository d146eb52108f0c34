// What begins after the first paint and goes on whatever screen is open.
import { computed, effect } from '@preact/signals';
import { BrowserNudge } from './audio/browser-nudge';
import type { ListenModel } from './state/listening/listen-model';
import type { ReadoutPhase } from './state/listening/readout-phase';
import { signSettled } from './state/listening/settled-sign';
import type { SettingsModel } from './state/settings/settings-model';
import type { LateModels } from './ui/frame/app-models';
import type { Route } from './ui/frame/route';
import { followFocus } from './ui/parts/controls/follow-focus';

export interface RunningParts {
  readonly listen: ListenModel;
  readonly settings: SettingsModel;
  readonly route: { readonly value: Route };
  readonly lateModels: () => Promise<LateModels>;
}

const silent: ReadoutPhase = { kind: 'idle' };

/** Connects them; call it once. */
export function beginLate({ listen, settings, route, lateModels }: RunningParts): void {
  followFocus(window);
  const nudge = new BrowserNudge();
  // The bench has a readout of its own: one settled note gives one sign.
  const isOnBench = computed(() => route.value.screen.endsWith('bench'));
  signSettled(
    {
      nudge,
      listen,
      settings,
      isAnnounced: () => listen.isOnPan.value && settings.announcement.value !== 'nothing',
    },
    computed(() => (isOnBench.value ? silent : listen.phase.value)),
  );
  let hasBench = false;
  effect(() => {
    if (!isOnBench.value || hasBench) return;
    hasBench = true;
    void lateModels().then(
      ({ bench }) => {
        const isAnnounced = () => settings.hands.value.speaksVerdict;
        const phase = computed(() => (isOnBench.value ? bench.phase.value : silent));
        signSettled({ nudge, listen, settings, isAnnounced }, phase);
      },
      () => {
        // The screen says that it could not be loaded; it tries again, and so does the sign.
        hasBench = false;
      },
    );
  });
}
