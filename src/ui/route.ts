// Where in the app we are: the part of the address after "#/".
import { type ReadonlySignal, signal } from '@preact/signals';

export type Route = 'rack' | 'listen' | 'practice' | 'settings';

const routes: readonly Route[] = ['rack', 'listen', 'practice', 'settings'];

export const routeOf = (hash: string): Route =>
  routes.find((route) => hash === `#/${route}`) ?? 'rack';

/** The current route, kept in step with the address bar. */
export function followRoute(window: Window): ReadonlySignal<Route> {
  const route = signal(routeOf(window.location.hash));
  window.addEventListener('hashchange', () => {
    route.value = routeOf(window.location.hash);
    window.scrollTo(0, 0);
  });
  return route;
}

export const addressOf = (route: Route): string => (route === 'rack' ? '#/' : `#/${route}`);
