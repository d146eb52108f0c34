import { describe, expect, it } from 'vitest';
import { newestOf, newestPer, newestPerNote } from '../../../src/domain/records/record-order';
import { instant, midiNote } from '../../../src/domain/tuning/units';

const record = (id: string, at: number, note: number, round: string | null = null) => ({
  id,
  at: instant(at),
  note: midiNote(note),
  round,
});
const old = record('a', 1, 60, 'r1');
const young = record('b', 3, 60);
const other = record('c', 2, 64, 'r1');

describe('the newest of records', () => {
  it('is found for each note, in whatever order they come', () => {
    for (const records of [
      [old, other, young],
      [young, other, old],
    ]) {
      expect([...newestPerNote(records)]).toEqual([
        [60, young],
        [64, other],
      ]);
    }
  });

  it('is found for anything else they have in common', () => {
    const found = newestPer([young, old, other], ({ round, id }) => round ?? id);
    expect([...found.values()]).toEqual([other, young]);
  });

  it('is the one with the later id where the moment is the same', () => {
    const twin = record('z', 3, 60);
    expect(newestPerNote([twin, young]).get(midiNote(60))).toBe(twin);
    expect(newestOf([twin, young])).toBe(twin);
  });

  it('is none of none', () => {
    expect(newestPerNote([]).size).toBe(0);
    expect(newestOf([])).toBeNull();
  });
});
