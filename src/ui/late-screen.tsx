// A screen that loads when it is opened, with the models it needs.
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { AppModels, FirstModels, LateModels } from './frame/app-models';
import type { LateRoute, ScreenProps } from './frame/screen-props';
import { LoadFailed } from './parts/gates/load-failed';

type Loading =
  | { readonly kind: 'loading' }
  | {
      readonly kind: 'loaded';
      readonly Screen: ComponentType<ScreenProps>;
      readonly models: AppModels;
    }
  | { readonly kind: 'failed' };

async function loadScreen(screen: LateRoute['screen']): Promise<ComponentType<ScreenProps>> {
  const { screenLoaders } = await import('./screen-loaders');
  return screenLoaders[screen]();
}

export function LateScreen({
  models,
  late,
  route,
}: {
  readonly models: FirstModels;
  readonly late: () => Promise<LateModels>;
  readonly route: LateRoute;
}) {
  const [loading, setLoading] = useState<Loading>({ kind: 'loading' });
  const { screen } = route;
  const id = 'pan' in route ? route.pan : null;
  useEffect(() => {
    const load = async () => {
      const [Screen, others] = await Promise.all([loadScreen(screen), late()]);
      // The pan that the address names is the one that is open.
      if (id !== null) void others.pan.open(id);
      setLoading({ kind: 'loaded', Screen, models: { ...models, ...others } });
    };
    load().catch(() => setLoading({ kind: 'failed' }));
  }, [models, late, screen, id]);
  switch (loading.kind) {
    case 'loading':
      return null;
    case 'loaded':
      return <loading.Screen models={loading.models} route={route} />;
    case 'failed':
      return <LoadFailed />;
  }
}
