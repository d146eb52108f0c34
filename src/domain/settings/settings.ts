// The user's settings: shape 1, defaults, and the way in for whatever storage holds.
import {
  areNeeds,
  areTunes,
  noNeeds,
  type SavedTune,
  type SetNeeds,
} from '../knock-check/set-needs';
import { areRuleChanges, type RuleChanges } from '../knock-check/tonight-rules';
import { highestA4, lowestA4, standardA4 } from '../tuning/equal-temperament';
import { isToleranceSet } from '../tuning/is-tolerance-set';
import { type Reference, references } from '../tuning/reference';
import { type ToleranceSet, usualTolerances } from '../tuning/tolerances';
import { type Hertz, type Instant, instant } from '../tuning/units';
import { type BenchSettings, isValidForBench, usualBenchSettings } from './bench-settings';
import { type HandsSettings, isValidForHands, usualHandsSettings } from './hands-settings';

const themes = ['system', 'light', 'dark'] as const;
const announcements = ['nothing', 'beep', 'voice'] as const;

export type Theme = (typeof themes)[number];
/** How the next note of a round is announced, besides on the screen. */
export type Announcement = (typeof announcements)[number];
/** The last backup of the whole rack. */
export interface LastBackup {
  readonly at: Instant;
  /** How many readings were kept then. */
  readonly readings: number;
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

/** Characters. The sheet's field takes no more. */
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

export interface Restored<T> {
  readonly value: T;
  readonly repairs: readonly string[];
}

const isOneOf =
  (values: readonly string[]) =>
  (value: unknown): boolean =>
    typeof value === 'string' && values.includes(value);

/** What each field may hold; a field that is not there yet takes its default without a repair. */
const isValid: Readonly<Record<Exclude<keyof Settings, 'shape'>, (value: unknown) => boolean>> = {
  a4: (value) => typeof value === 'number' && value >= lowestA4 && value <= highestA4,
  theme: isOneOf(themes),
  announcement: isOneOf(announcements),
  reference: isOneOf(references),
  limits: isToleranceSet,
  keepsSound: (value) => typeof value === 'boolean',
  contact: (value) => typeof value === 'string' && value.length <= longestContact,
  lastBackup: (value) => value === null || isBackup(value),
  tunes: areTunes,
  setNeeds: areNeeds,
  tonightRules: areRuleChanges,
  ...isValidForBench,
  ...isValidForHands,
};

/** Valid settings from anything: bad parts fall back to their defaults and are listed, unknown fields stay. */
export function restoreSettings(stored: unknown): Restored<Settings> {
  if (stored === undefined || stored === null) return { value: defaultSettings, repairs: [] };
  if (typeof stored !== 'object') return { value: defaultSettings, repairs: ['settings'] };
  const fields = stored as Readonly<Record<string, unknown>>;
  const bad = Object.entries(isValid)
    .filter(([name, check]) => !check(fields[name]))
    .map(([name]) => name);
  const defaults = Object.entries(defaultSettings).filter(([name]) => bad.includes(name));
  return {
    // Every field of Settings has been checked, or replaced by its default.
    value: { ...fields, ...Object.fromEntries(defaults), shape: 1 } as unknown as Settings,
    repairs: bad.filter((name) => fields[name] !== undefined),
  };
}

function isBackup(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const { at, readings } = value as Readonly<Record<string, unknown>>;
  return isCount(at) && isCount(readings);
}

const isCount = (value: unknown): boolean => Number.isSafeInteger(value) && Number(value) >= 0;

/** The last backup, made now. */
export const backupAt = (at: number, readings: number): LastBackup => ({
  at: instant(at),
  readings,
});
