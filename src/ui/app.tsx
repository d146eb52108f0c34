// The whole app: one screen at a time; seldom used screens load when they are opened.
import type { ReadonlySignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { AppModels } from './app-models';
import { followTheme } from './follow-theme';
import { LoadFailed } from './parts/load-failed';
import type { Route } from './route';
import { ListenScreen } from './screens/listen-screen';
import { RackScreen } from './screens/rack-screen';

interface ScreenProps {
  readonly models: AppModels;
}

const loadPractice = () =>
  import('./screens/practice-screen').then((module) => module.PracticeScreen);
const loadSettings = () =>
  import('./screens/settings-screen').then((module) => module.SettingsScreen);

export function App({
  models,
  route,
}: {
  readonly models: AppModels;
  readonly route: ReadonlySignal<Route>;
}) {
  useLayoutEffect(() => followTheme(models.settings.theme, window), [models]);
  switch (route.value.screen) {
    case 'rack':
      return <RackScreen models={models} />;
    case 'listen':
      return <ListenScreen models={models} />;
    case 'practice':
      return <Later load={loadPractice} models={models} key="practice" />;
    case 'settings':
      return <Later load={loadSettings} models={models} key="settings" />;
    default:
      return <RackScreen models={models} />;
  }
}

type LoadedScreen =
  | { readonly kind: 'loading' }
  | { readonly kind: 'loaded'; readonly Screen: ComponentType<ScreenProps> }
  | { readonly kind: 'failed' };

function Later({
  load,
  models,
}: ScreenProps & { readonly load: () => Promise<ComponentType<ScreenProps>> }) {
  const [screen, setScreen] = useState<LoadedScreen>({ kind: 'loading' });
  useEffect(() => {
    load().then(
      (Screen) => setScreen({ kind: 'loaded', Screen }),
      () => setScreen({ kind: 'failed' }),
    );
  }, [load]);
  switch (screen.kind) {
    case 'loading':
      return null;
    case 'loaded':
      return <screen.Screen models={models} />;
    case 'failed':
      return <LoadFailed />;
  }
}
