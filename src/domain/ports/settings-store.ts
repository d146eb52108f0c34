import type { Settings } from '../records/settings';

export type SettingsLoad =
  | { readonly kind: 'loaded'; readonly settings: Settings; readonly repairs: readonly string[] }
  | { readonly kind: 'unavailable' };

export interface SettingsStore {
  load(): Promise<SettingsLoad>;
  /** Resolves true once it is on disk. */
  save(settings: Settings): Promise<boolean>;
}
