// The bench of a note, with a pan or without one.
import { useLayoutEffect } from 'preact/hooks';
import type { ScreenProps } from '../../frame/screen-props';
import { Bench } from '../../parts/bench/bench';
import { Instead } from '../../parts/gates/pan-gate';
import { benchWords } from '../../words/measuring/bench-words';
import { rackWords, storeTroubleWords } from '../../words/rack-words';

export function BenchScreen({ models, route }: ScreenProps) {
  const { bench: model } = models;
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
  const view = model.view.value;
  switch (view.kind) {
    case 'open':
      return <Bench models={models} bench={view.bench} />;
    case 'none':
    case 'loading':
      return <Instead text={rackWords.reading} tone="hint" />;
    case 'missing':
      return <Instead text={benchWords.missing} tone="hint warn" />;
    case 'trouble':
      return <Instead text={storeTroubleWords[view.trouble]} tone="hint warn" />;
  }
}
