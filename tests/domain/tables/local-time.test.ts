import { describe, expect, it } from 'vitest';
import { localTime } from '../../../src/domain/tables/local-time';
import { instant } from '../../../src/domain/tuning/units';

describe('a moment in local time', () => {
  const at = instant(Date.UTC(2026, 4, 3, 23, 5));
  it.each([
    [0, '2026-05-03T23:05:00+00:00'],
    [120, '2026-05-04T01:05:00+02:00'],
    [-240, '2026-05-03T19:05:00-04:00'],
    [345, '2026-05-04T04:50:00+05:45'],
  ])('%i minutes ahead of UTC', (ahead, text) => {
    expect(localTime(at, () => ahead)).toBe(text);
    expect(Date.parse(text)).toBe(at);
  });
});
