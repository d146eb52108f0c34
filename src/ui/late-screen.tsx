// A screen that loads when it is opened, with the models it needs.
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { AppModels, PanScreenModels } from './app-models';
import { LoadFailed } from './parts/load-failed';
import type { LateRoute, ScreenProps } from './screen-props';

type Loader = () => Promise<ComponentType<ScreenProps>>;

const loaders: Readonly<Record<LateRoute['screen'], Loader>> = {
  practice: () => import('./screens/practice-screen').then((file) => file.PracticeScreen),
  'practice-bench': () =>
    import('./screens/practice-bench-screen').then((file) => file.PracticeBenchScreen),
  settings: () => import('./screens/settings-screen').then((file) => file.SettingsScreen),
  'add-pan': () => import('./screens/add-pan-screen').then((file) => file.AddPanScreen),
  layout: () => import('./screens/layout-screen').then((file) => file.LayoutScreen),
  backup: () => import('./screens/backup-screen').then((file) => file.BackupScreen),
  cautions: () => import('./screens/cautions-screen').then((file) => file.CautionsScreen),
  receive: () => import('./screens/receive-screen').then((file) => file.ReceiveScreen),
  send: () => import('./screens/backup-screen').then((file) => file.BackupScreen),
  tuned: () => import('./screens/tuned-screen').then((file) => file.TunedScreen),
  visit: () => import('./screens/visit-screen').then((file) => file.VisitScreen),
  sheet: () => import('./screens/sheet-screen').then((file) => file.SheetScreen),
  details: () => import('./screens/details-screen').then((file) => file.DetailsScreen),
  begin: () => import('./screens/begin-screen').then((file) => file.BeginScreen),
  pan: () => import('./screens/pan-screen').then((file) => file.PanScreen),
  result: () => import('./screens/result-screen').then((file) => file.ResultScreen),
  history: () => import('./screens/history-screen').then((file) => file.HistoryScreen),
  note: () => import('./screens/note-screen').then((file) => file.NoteScreen),
  knock: () => import('./screens/knock-screen').then((file) => file.KnockScreen),
  tonight: () => import('./screens/tonight-screen').then((file) => file.TonightScreen),
  dropped: () => import('./screens/dropped-screen').then((file) => file.DroppedScreen),
  round: () => import('./screens/round-screen').then((file) => file.RoundScreen),
  bench: () => import('./screens/bench-screen').then((file) => file.BenchScreen),
  'bare-bench': () => import('./screens/bench-screen').then((file) => file.BenchScreen),
};

type Loading =
  | { readonly kind: 'loading' }
  | {
      readonly kind: 'loaded';
      readonly Screen: ComponentType<ScreenProps>;
      readonly models: PanScreenModels;
    }
  | { readonly kind: 'failed' };

export function LateScreen({
  models,
  route,
}: {
  readonly models: AppModels;
  readonly route: LateRoute;
}) {
  const [loading, setLoading] = useState<Loading>({ kind: 'loading' });
  const { screen } = route;
  const id = 'pan' in route ? route.pan : null;
  useEffect(() => {
    const load = async () => {
      const [Screen, pans] = await Promise.all([loaders[screen](), models.pans()]);
      // The pan that the address names is the one that is open.
      if (id !== null) void pans.pan.open(id);
      setLoading({ kind: 'loaded', Screen, models: { ...models, ...pans } });
    };
    load().catch(() => setLoading({ kind: 'failed' }));
  }, [models, screen, id]);
  switch (loading.kind) {
    case 'loading':
      return null;
    case 'loaded':
      return <loading.Screen models={loading.models} route={route} />;
    case 'failed':
      return <LoadFailed />;
  }
}
