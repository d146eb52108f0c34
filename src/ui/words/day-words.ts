// Days and moments as people write them.

const day = { day: 'numeric', month: 'short', year: 'numeric' } as const;

/** "3 May 2026", where the phone is. */
export const dayWords = (at: number): string => new Date(at).toLocaleDateString('en-GB', day);

/** "3 May 2026, 18:05", to tell rounds of one day apart. */
export const momentWords = (at: number): string =>
  new Date(at).toLocaleString('en-GB', { ...day, hour: '2-digit', minute: '2-digit' });

/** "3 May", for a chart. */
export const shortDayWords = (at: number): string =>
  new Date(at).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });
