// What a screen that loads when it is opened is given.
import type { AppModels } from './app-models';
import type { Route } from './route';

export type LateRoute = Exclude<Route, { readonly screen: 'rack' | 'listen' }>;

/** The few models that a screen uses; each screen names its own. */
export type Needs<Name extends keyof AppModels> = Pick<AppModels, Name>;

export interface ScreenProps<Models = AppModels> {
  readonly models: Models;
  readonly route: LateRoute;
}
