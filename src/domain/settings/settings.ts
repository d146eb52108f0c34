// The user's settings: shape 1 and what they are at first.
import { noNeeds, type SavedTune, type SetNeeds } from '../knock-check/saved-tunes';
import type { RuleChanges } from '../knock-check/tonight-rules';
import { standardA4 } from '../tuning/equal-temperament';
import type { Reference } from '../tuning/reference';
import { type ToleranceSet, usualTolerances } from '../tuning/tolerances';
import { type Hertz, type Instant, instant } from '../tuning/units';
import { type BenchSettings, usualBenchSettings } from './bench-settings';
import { type HandsSettings, usualHandsSettings } from './hands-settings';

export const themes = ['system', 'light', 'dark'] as const;
export const announcements = ['nothing', 'beep', 'voice'] as const;

export type Theme = (typeof themes)[number];
/** How the next note of a round is announced, besides on the screen. */
export type Announcement = (typeof announcements)[number];
/** The last backup of the whole rack. */
export interface LastBackup {
  readonly at: Instant;
  /** How many readings were kept then. */
  readonly readings: number;
  /** How often anything had been written by then (see `RackSize`); missing where an older app made it. */
  readonly changes?: number;
}

export interface Settings extends BenchSettings, HandsSettings {
  readonly shape: 1;
  /** The band's A4. */
  readonly a4: Hertz;
  readonly theme: Theme;
  readonly announcement: Announcement;
  readonly reference: Reference;
  /** What the user calls good, playable and out. */
  readonly limits: ToleranceSet;
  /** Keep a second of sound with each reading. */
  readonly keepsSound: boolean;
  readonly lastBackup: LastBackup | null;
  /** Whom a tuner is to answer: a name and how to reach them, printed on sheets. */
  readonly contact: string;
  /** The band's tunes as the notes they use. */
  readonly tunes: readonly SavedTune[];
  /** What tonight's set needs. */
  readonly setNeeds: SetNeeds;
  /** The rules of tonight as far as they are not the usual ones. */
  readonly tonightRules: RuleChanges;
}

/** Characters. The sheet's field takes no more (chosen, no source). */
export const longestContact = 500;

export const defaultSettings: Settings = {
  shape: 1,
  a4: standardA4,
  theme: 'system',
  announcement: 'nothing',
  reference: 'band',
  limits: usualTolerances,
  keepsSound: false,
  lastBackup: null,
  contact: '',
  tunes: [],
  setNeeds: noNeeds,
  tonightRules: {},
  ...usualBenchSettings,
  ...usualHandsSettings,
};

/** The last backup, made now. */
export const backupAt = (
  at: number,
  { readings, changes }: { readonly readings: number; readonly changes: number },
): LastBackup => ({ at: instant(at), readings, changes });
