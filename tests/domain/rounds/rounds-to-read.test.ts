import { describe, expect, it } from 'vitest';
import { mostBetween, roundsToRead } from '../../../src/domain/rounds/rounds-to-read';
import { sampleRound } from '../../storage/rack/rack-sample';

const rounds = Array.from({ length: 10_000 }, (_, k) => sampleRound(`round-${k}`));
const places = (found: readonly { readonly id: string }[]) =>
  found.map(({ id }) => Number(id.slice('round-'.length)));

describe('the rounds that are read to show a history', () => {
  it('are all of them where there are few', () => {
    const few = rounds.slice(0, 40 + mostBetween);
    expect(roundsToRead(few, 40)).toEqual(few);
  });

  it('are the newest ones, and of ten thousand so many older ones as a chart can show', () => {
    const found = places(roundsToRead(rounds, 40));
    expect(found).toHaveLength(40 + mostBetween);
    expect(found.slice(0, 40)).toEqual(Array.from({ length: 40 }, (_, k) => k));
    expect(found.at(-1)).toBe(9_999);
    const gaps = found.slice(41).map((place, k) => place - (found[40 + k] ?? 0));
    expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThanOrEqual(1);
  });

  it('have those among them that something else is counted from', () => {
    const needed = rounds.slice(5_001, 5_002);
    expect(places(roundsToRead(rounds, 40, needed))).toContain(5_001);
  });
});
