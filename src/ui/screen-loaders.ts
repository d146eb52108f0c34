// Where each screen lies that loads when it is opened. Itself it loads with the first of them.
import type { ComponentType } from 'preact';
import type { LateRoute, ScreenProps } from './frame/screen-props';

type Loader = () => Promise<ComponentType<ScreenProps>>;

export const screenLoaders: Readonly<Record<LateRoute['screen'], Loader>> = {
  practice: () => import('./screens/measuring/practice-screen').then((file) => file.PracticeScreen),
  'practice-bench': () =>
    import('./screens/measuring/practice-bench-screen').then((file) => file.PracticeBenchScreen),
  inside: () => import('./screens/measuring/inside-screen').then((file) => file.InsideScreen),
  settings: () => import('./screens/app/settings-screen').then((file) => file.SettingsScreen),
  'add-pan': () => import('./screens/rack/add-pan-screen').then((file) => file.AddPanScreen),
  layout: () => import('./screens/pan/layout-screen').then((file) => file.LayoutScreen),
  backup: () => import('./screens/rack/backup-screen').then((file) => file.BackupScreen),
  cautions: () => import('./screens/app/cautions-screen').then((file) => file.CautionsScreen),
  'what-moves': () =>
    import('./screens/measuring/what-moves-screen').then((file) => file.WhatMovesScreen),
  several: () => import('./screens/tuner/several-screen').then((file) => file.SeveralScreen),
  receive: () => import('./screens/rack/receive-screen').then((file) => file.ReceiveScreen),
  send: () => import('./screens/rack/backup-screen').then((file) => file.BackupScreen),
  tuned: () => import('./screens/tuner/tuned-screen').then((file) => file.TunedScreen),
  answers: () => import('./screens/tuner/answers-screen').then((file) => file.AnswersScreen),
  visit: () => import('./screens/tuner/visit-screen').then((file) => file.VisitScreen),
  sheet: () => import('./screens/tuner/sheet-screen').then((file) => file.SheetScreen),
  details: () => import('./screens/pan/details-screen').then((file) => file.DetailsScreen),
  begin: () => import('./screens/measuring/begin-screen').then((file) => file.BeginScreen),
  pan: () => import('./screens/pan/pan-screen').then((file) => file.PanScreen),
  result: () => import('./screens/pan/result-screen').then((file) => file.ResultScreen),
  history: () => import('./screens/pan/history-screen').then((file) => file.HistoryScreen),
  note: () => import('./screens/pan/note-screen').then((file) => file.NoteScreen),
  knock: () => import('./screens/fall/knock-screen').then((file) => file.KnockScreen),
  'taken-out': () => import('./screens/pan/taken-out-screen').then((file) => file.TakenOutScreen),
  tonight: () => import('./screens/fall/tonight-screen').then((file) => file.TonightScreen),
  dropped: () => import('./screens/fall/dropped-screen').then((file) => file.DroppedScreen),
  round: () => import('./screens/measuring/round-screen').then((file) => file.RoundScreen),
  bench: () => import('./screens/measuring/bench-screen').then((file) => file.BenchScreen),
  'bare-bench': () => import('./screens/measuring/bench-screen').then((file) => file.BenchScreen),
};
