import type { Settings } from '../settings/settings';

export type SettingsLoad =
  | { readonly kind: 'loaded'; readonly settings: Settings; readonly repairs: readonly string[] }
  | { readonly kind: 'unavailable' };

export interface SettingsStore {
  load(): Promise<SettingsLoad>;
  /** Writes these over what is kept, and nothing else; resolves true once it is on disk. */
  save(changes: Partial<Settings>): Promise<boolean>;
}
