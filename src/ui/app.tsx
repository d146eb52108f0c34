// The whole app: one screen at a time; all but the first two load when they are opened.
import type { ReadonlySignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import type { FirstModels, LateModels } from './frame/app-models';
import { followTheme } from './frame/follow-theme';
import type { Route } from './frame/route';
import { LateScreen } from './late-screen';
import { ListenScreen } from './screens/measuring/listen-screen';
import { RackScreen } from './screens/rack/rack-screen';

export function App({
  models,
  late,
  route: { value: route },
}: {
  readonly models: FirstModels;
  /** Rejects where they cannot be loaded; the next call tries again. */
  readonly late: () => Promise<LateModels>;
  readonly route: ReadonlySignal<Route>;
}) {
  useLayoutEffect(() => followTheme(models.settings.theme, window), [models]);
  switch (route.screen) {
    case 'rack':
      return <RackScreen models={models} />;
    case 'listen':
      return <ListenScreen models={models} />;
    default:
      // Another pan, round or note begins its screen anew.
      return (
        <LateScreen
          models={models}
          late={late}
          route={route}
          key={Object.values(route).join('/')}
        />
      );
  }
}
