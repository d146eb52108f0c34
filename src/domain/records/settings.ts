// The user's settings: shape 1, defaults, and the way in for whatever storage holds.
import { highestA4, lowestA4, standardA4 } from '../tuning/equal-temperament';
import { type Hertz, hertz } from '../tuning/units';

export type Theme = 'system' | 'light' | 'dark';

export interface Settings {
  readonly shape: 1;
  /** The band's A4. */
  readonly a4: Hertz;
  readonly theme: Theme;
}

export const defaultSettings: Settings = { shape: 1, a4: standardA4, theme: 'system' };

export interface Restored<T> {
  readonly value: T;
  readonly repairs: readonly string[];
}

/** Valid settings from anything: bad parts fall back to their defaults and are listed, unknown fields stay. */
export function restoreSettings(stored: unknown): Restored<Settings> {
  if (stored === undefined || stored === null) return { value: defaultSettings, repairs: [] };
  if (typeof stored !== 'object') return { value: defaultSettings, repairs: ['settings'] };
  const fields = stored as Readonly<Record<string, unknown>>;
  const repairs: string[] = [];
  const a4 = fields['a4'];
  const theme = fields['theme'];
  const a4Valid = typeof a4 === 'number' && a4 >= lowestA4 && a4 <= highestA4;
  const themeValid = theme === 'system' || theme === 'light' || theme === 'dark';
  if (!a4Valid) repairs.push('a4');
  if (!themeValid) repairs.push('theme');
  return {
    value: {
      ...fields,
      shape: 1,
      a4: a4Valid ? hertz(a4) : defaultSettings.a4,
      theme: themeValid ? theme : defaultSettings.theme,
    },
    repairs,
  };
}
