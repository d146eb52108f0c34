// A screen that loads when it is opened, with the models it needs.
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { AppModels, PanScreenModels } from './frame/app-models';
import type { LateRoute, ScreenProps } from './frame/screen-props';
import { LoadFailed } from './parts/gates/load-failed';

type Loader = () => Promise<ComponentType<ScreenProps>>;

const loaders: Readonly<Record<LateRoute['screen'], Loader>> = {
  practice: () => import('./screens/measuring/practice-screen').then((file) => file.PracticeScreen),
  'practice-bench': () =>
    import('./screens/measuring/practice-bench-screen').then((file) => file.PracticeBenchScreen),
  settings: () => import('./screens/app/settings-screen').then((file) => file.SettingsScreen),
  'add-pan': () => import('./screens/rack/add-pan-screen').then((file) => file.AddPanScreen),
  layout: () => import('./screens/pan/layout-screen').then((file) => file.LayoutScreen),
  backup: () => import('./screens/rack/backup-screen').then((file) => file.BackupScreen),
  cautions: () => import('./screens/app/cautions-screen').then((file) => file.CautionsScreen),
  receive: () => import('./screens/rack/receive-screen').then((file) => file.ReceiveScreen),
  send: () => import('./screens/rack/backup-screen').then((file) => file.BackupScreen),
  tuned: () => import('./screens/tuner/tuned-screen').then((file) => file.TunedScreen),
  visit: () => import('./screens/tuner/visit-screen').then((file) => file.VisitScreen),
  sheet: () => import('./screens/tuner/sheet-screen').then((file) => file.SheetScreen),
  details: () => import('./screens/pan/details-screen').then((file) => file.DetailsScreen),
  begin: () => import('./screens/measuring/begin-screen').then((file) => file.BeginScreen),
  pan: () => import('./screens/pan/pan-screen').then((file) => file.PanScreen),
  result: () => import('./screens/pan/result-screen').then((file) => file.ResultScreen),
  history: () => import('./screens/pan/history-screen').then((file) => file.HistoryScreen),
  note: () => import('./screens/pan/note-screen').then((file) => file.NoteScreen),
  knock: () => import('./screens/fall/knock-screen').then((file) => file.KnockScreen),
  tonight: () => import('./screens/fall/tonight-screen').then((file) => file.TonightScreen),
  dropped: () => import('./screens/fall/dropped-screen').then((file) => file.DroppedScreen),
  round: () => import('./screens/measuring/round-screen').then((file) => file.RoundScreen),
  bench: () => import('./screens/measuring/bench-screen').then((file) => file.BenchScreen),
  'bare-bench': () => import('./screens/measuring/bench-screen').then((file) => file.BenchScreen),
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
