// Bass notes through the microphones of phones.
import { describe, expect, it } from 'vitest';
import { basses, lowNotes } from '../ear-scenes/low-notes';

describe('the benchmark of bass notes in small', () => {
  it.each(basses)('gives no wrong name: $name', (bass) => {
    const { outcomes, octaveErrors } = lowNotes(bass, [3001, 3002, 3003, 3004, 3005, 3006]);
    expect(outcomes).not.toContain('wrong');
    expect(octaveErrors).toBe(0);
    expect(outcomes.filter((each) => each === 'right').length).toBeGreaterThan(2);
  });
});
