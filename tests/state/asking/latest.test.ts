import { expect, it } from 'vitest';
import { createLatest } from '../../../src/state/asking/latest';

it('an answer counts until something is asked later, in whatever order the answers come', () => {
  const latest = createLatest();
  const first = latest.begin();
  expect(first()).toBe(true);
  const second = latest.begin();
  expect([second(), first()]).toEqual([true, false]);
  expect([first(), second()]).toEqual([false, true]);
});

it('who joins goes along with what was asked last, and ends with it', () => {
  const latest = createLatest();
  const asked = latest.begin();
  const joined = latest.join();
  expect([asked(), joined()]).toEqual([true, true]);
  latest.begin();
  expect([asked(), joined()]).toEqual([false, false]);
});

it('who joins before anything was asked counts until something is', () => {
  const latest = createLatest();
  const joined = latest.join();
  expect(joined()).toBe(true);
  latest.begin();
  expect(joined()).toBe(false);
});

it('dropping makes every awaited answer worthless, and the next question counts again', () => {
  const latest = createLatest();
  const before = [latest.begin(), latest.join()];
  latest.drop();
  expect(before.map((isLatest) => isLatest())).toEqual([false, false]);
  expect(latest.begin()()).toBe(true);
});

it('two of them know nothing of each other', () => {
  const [one, other] = [createLatest(), createLatest()];
  const asked = one.begin();
  other.begin();
  other.drop();
  expect(asked()).toBe(true);
});
