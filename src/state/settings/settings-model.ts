// The user's settings: loaded once, saved at every change, with the truth about whether that worked.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { SavedTune, SetNeeds } from '../../domain/knock-check/saved-tunes';
import type { RuleChanges } from '../../domain/knock-check/tonight-rules';
import type { SettingsStore } from '../../domain/ports/settings-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import type { BenchSettings } from '../../domain/settings/bench-settings';
import type { HandsSettings } from '../../domain/settings/hands-settings';
import {
  type Announcement,
  defaultSettings,
  type LastBackup,
  type Settings,
  type Theme,
} from '../../domain/settings/settings';
import { highestA4, lowestA4 } from '../../domain/tuning/equal-temperament';
import type { Reference } from '../../domain/tuning/reference';
import type { ToleranceSet } from '../../domain/tuning/tolerances';
import { type Hertz, hertz } from '../../domain/tuning/units';

export interface SettingsModel {
  readonly a4: ReadonlySignal<Hertz>;
  readonly theme: ReadonlySignal<Theme>;
  /** How the next note of a round is announced. */
  readonly announcement: ReadonlySignal<Announcement>;
  /** What fundamentals are judged against. */
  readonly reference: ReadonlySignal<Reference>;
  readonly limits: ReadonlySignal<ToleranceSet>;
  /** Everything that judging needs. */
  readonly judging: ReadonlySignal<CardSettings>;
  readonly keepsSound: ReadonlySignal<boolean>;
  readonly lastBackup: ReadonlySignal<LastBackup | null>;
  /** Whom a tuner is to answer. */
  readonly contact: ReadonlySignal<string>;
  readonly tunes: ReadonlySignal<readonly SavedTune[]>;
  /** What tonight's set needs. */
  readonly setNeeds: ReadonlySignal<SetNeeds>;
  /** What the user has changed in the rules of tonight, as it was stored (see `rulesWith`). */
  readonly ruleChanges: ReadonlySignal<RuleChanges>;
  /** What the bench may say, and what it remembers. */
  readonly bench: ReadonlySignal<BenchSettings>;
  /** Keys and the voice, for busy hands. */
  readonly hands: ReadonlySignal<HandsSettings>;
  /** The phone refuses to keep settings (private window, storage full). */
  readonly isNotKept: ReadonlySignal<boolean>;
  load(): Promise<void>;
  /** Sets the band's A4; false (and nothing changed) outside 400–480 Hz. */
  setA4(value: number): boolean;
  set(changes: Partial<Omit<Settings, 'shape' | 'a4'>>): void;
}

export function createSettingsModel(store: SettingsStore): SettingsModel {
  const settings = signal<Settings>(defaultSettings);
  const isNotKept = signal(false);
  let loading: Promise<boolean> | null = null;
  /** Changes that are not on disk yet: they win over what is read after them. */
  let unsaved: Partial<Settings> = {};

  const read = async (): Promise<boolean> => {
    const loaded = await store.load();
    if (loaded.kind === 'unavailable') {
      // The next change tries again.
      loading = null;
      return false;
    }
    settings.value = { ...loaded.settings, ...unsaved };
    return true;
  };
  const ensureRead = (): Promise<boolean> => {
    loading ??= read();
    return loading;
  };
  const change = async (next: Partial<Settings>): Promise<void> => {
    unsaved = { ...unsaved, ...next };
    settings.value = { ...settings.value, ...next };
    // What cannot be read must not be written over.
    const isRead = await ensureRead();
    const tried = unsaved;
    const kept = isRead && (await store.save(tried));
    if (kept) unsaved = without(unsaved, tried);
    isNotKept.value = !kept;
  };
  return {
    a4: computed(() => settings.value.a4),
    theme: computed(() => settings.value.theme),
    announcement: computed(() => settings.value.announcement),
    reference: computed(() => settings.value.reference),
    limits: computed(() => settings.value.limits),
    judging: computed(() => {
      const { a4, reference, limits } = settings.value;
      return { a4, reference, limits };
    }),
    keepsSound: computed(() => settings.value.keepsSound),
    lastBackup: computed(() => settings.value.lastBackup),
    contact: computed(() => settings.value.contact),
    tunes: computed(() => settings.value.tunes),
    setNeeds: computed(() => settings.value.setNeeds),
    ruleChanges: computed(() => settings.value.tonightRules),
    bench: settings,
    hands: settings,
    isNotKept,
    async load() {
      isNotKept.value = !(await ensureRead());
    },
    setA4(value) {
      if (!(value >= lowestA4 && value <= highestA4)) return false;
      void change({ a4: hertz(value) });
      return true;
    },
    set(changes) {
      void change(changes);
    },
  };
}

/** `changes` without those that have the same value in `done`. */
function without(changes: Partial<Settings>, done: Partial<Settings>): Partial<Settings> {
  const rest = Object.entries(changes).filter(
    ([name, value]) => done[name as keyof Settings] !== value,
  );
  return Object.fromEntries(rest);
}
