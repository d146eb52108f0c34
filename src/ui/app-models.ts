// The models that the screens show.
import type { ReadonlySignal } from '@preact/signals';
import type { OfflineState, PracticeSource } from '../domain/ports';
import type { ListenModel } from '../state/listen-model';
import type { SettingsModel } from '../state/settings-model';

export interface AppModels {
  readonly listen: ListenModel;
  readonly settings: SettingsModel;
  readonly offline: ReadonlySignal<OfflineState>;
  readonly applyUpdate: () => void;
  /** The practice pan comes when it is first wanted. */
  readonly practicePan: () => Promise<PracticeSource>;
}
