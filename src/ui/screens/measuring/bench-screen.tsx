// The bench of a note, with a pan or without one.
import { useLayoutEffect } from 'preact/hooks';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { Bench } from '../../parts/bench/bench';
import { Instead } from '../../parts/gates/instead';
import { ViewGate } from '../../parts/gates/view-gate';
import { benchWords } from '../../words/measuring/bench-words';

type Models = Needs<'bench' | 'settings' | 'listen' | 'announcer' | 'headset' | 'targetTone'>;

export function BenchScreen({ models, route }: ScreenProps<Models>) {
  const { bench: model, targetTone: tone, ...around } = models;
  const isBench = route.screen === 'bench' || route.screen === 'bare-bench';
  const note = isBench ? route.note : null;
  const pan = route.screen === 'bench' ? route.pan : null;
  // Before anything is painted: a tap in the first moment is for this bench, not for the one that was open before.
  useLayoutEffect(() => {
    if (note === null) return;
    void model.open(pan === null ? { kind: 'bare', note } : { kind: 'pan', pan, note });
    const keepWhenHidden = (): void => {
      if (document.visibilityState === 'hidden') model.keep();
    };
    document.addEventListener('visibilitychange', keepWhenHidden);
    // However the screen is left, the microphone goes off with it; what was heard is kept.
    return () => {
      document.removeEventListener('visibilitychange', keepWhenHidden);
      model.leave();
    };
  }, [model, note, pan]);
  return (
    <ViewGate
      view={model.view.value}
      missing={<Instead text={benchWords.missing} tone="hint warn" />}
    >
      {({ bench }) => <Bench {...around} model={model} tone={tone} bench={bench} />}
    </ViewGate>
  );
}
