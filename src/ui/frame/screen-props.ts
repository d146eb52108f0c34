// What a screen that loads when it is opened is given.
import type { PanScreenModels } from './app-models';
import type { Route } from './route';

export type LateRoute = Exclude<Route, { readonly screen: 'rack' | 'listen' }>;

export interface ScreenProps {
  readonly models: PanScreenModels;
  readonly route: LateRoute;
}
