// The whole app: one screen at a time; all but the first two load when they are opened.
import type { ReadonlySignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import type { AppModels } from './frame/app-models';
import { followTheme } from './frame/follow-theme';
import type { Route } from './frame/route';
import { LateScreen } from './late-screen';
import { ListenScreen } from './screens/measuring/listen-screen';
import { RackScreen } from './screens/rack/rack-screen';

export function App({
  models,
  route: { value: route },
}: {
  readonly models: AppModels;
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
      return <LateScreen models={models} route={route} key={Object.values(route).join('/')} />;
  }
}
