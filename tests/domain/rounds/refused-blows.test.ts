import { describe, expect, it } from 'vitest';
import type { Heard, RefusalReason } from '../../../src/domain/measurement/strike';
import {
  type BlowsSoFar,
  blowsWithout,
  noBlowsSoFar,
  refusedBlowsOf,
  withBlowHeard,
} from '../../../src/domain/rounds/refused-blows';
import { midiNote, seconds } from '../../../src/domain/tuning/units';
import { strikeSample } from '../reading/strike-sample';

const d4 = midiNote(62);
const a4 = midiNote(69);
const knock = (at: number): Heard => ({ kind: 'knock', event: at * 100, at: seconds(at) });
const refused = (at: number, reason: RefusalReason = 'too-fast'): Heard => ({
  kind: 'refused',
  event: at * 100,
  at: seconds(at),
  reason,
  note: null,
  candidates: [],
});
const strike = (at: number, provisional = false): Heard => ({
  ...strikeSample(),
  at: seconds(at),
  provisional,
});
const blowsAfter = (
  all: readonly Heard[],
  asked: number | null = d4,
  from: BlowsSoFar = noBlowsSoFar,
) =>
  all.reduce(
    (blows, heard) => withBlowHeard(blows, heard, asked === null ? null : midiNote(asked)),
    from,
  );

describe('blows on the note that is asked for', () => {
  it('are counted as knocks, and as strikes that were heard as several', () => {
    const blows = blowsAfter([knock(1), refused(3), knock(5), refused(7), refused(9)]);
    expect(refusedBlowsOf(blows, d4)).toEqual({ knocks: 2, heardAsSeveral: 3 });
    expect(refusedBlowsOf(blows, a4)).toBeNull();
  });

  it('count nothing where they became strikes, or were refused for another reason', () => {
    const blows = blowsAfter([
      strike(1),
      strike(3, true),
      refused(5, 'too-loud'),
      refused(7, 'wrong-note'),
      refused(9, 'lost-audio'),
    ]);
    expect(refusedBlowsOf(blows, d4)).toBeNull();
  });

  it('count once each, however often the ear speaks of one blow', () => {
    const rattle = blowsAfter([knock(1), refused(1.1), knock(1.4), refused(1.7)]);
    expect(refusedBlowsOf(rattle, d4)).toEqual({ knocks: 0, heardAsSeveral: 1 });
    const heardAtLast = blowsAfter([knock(1), refused(1.2), strike(1.3)]);
    expect(refusedBlowsOf(heardAtLast, d4)).toBeNull();
    const echo = blowsAfter([strike(1), knock(1.3)]);
    expect(refusedBlowsOf(echo, d4)).toBeNull();
  });

  it('are counted note by note, and anew once a note is done', () => {
    const first = blowsAfter([refused(1), refused(3)]);
    const second = blowsAfter([refused(5)], a4, blowsWithout(first, d4));
    expect(refusedBlowsOf(second, d4)).toBeNull();
    expect(refusedBlowsOf(second, a4)).toEqual({ knocks: 0, heardAsSeveral: 1 });
  });

  it('do not count for the next note with what is left of them', () => {
    const locked = blowsWithout(blowsAfter([knock(1)]), d4);
    const rest = blowsAfter([refused(1.2)], a4, locked);
    expect(refusedBlowsOf(rest, a4)).toBeNull();
    expect(refusedBlowsOf(rest, d4)).toBeNull();
  });
});

it('blows while no note is asked for count for none, as with a hammer on the bench', () => {
  const blows = blowsAfter([knock(1), refused(3), knock(5)], null);
  expect(blows.refused.size).toBe(0);
});
