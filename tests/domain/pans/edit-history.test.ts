import { describe, expect, it } from 'vitest';
import { beginHistory, changed, redone, undone } from '../../../src/domain/pans/edit-history';
import * as fc from '../../properties';

describe('the history of edits', () => {
  it('goes back and forward again', () => {
    const two = changed(changed(beginHistory('a'), 'b'), 'c');
    expect(undone(two).present).toBe('b');
    expect(undone(undone(two)).present).toBe('a');
    expect(redone(undone(two)).present).toBe('c');
  });

  it('stays where it is at both ends', () => {
    const one = beginHistory('a');
    expect(undone(one)).toBe(one);
    expect(redone(one)).toBe(one);
  });

  it('forgets what was taken back once something else is done', () => {
    const other = changed(undone(changed(beginHistory('a'), 'b')), 'c');
    expect(redone(other).present).toBe('c');
    expect(undone(other).present).toBe('a');
  });

  it('takes changes about the same thing back in one step, and no others', () => {
    const moved = ['b', 'c', 'd'].reduce(
      (h, next) => changed(h, next, 'move C4'),
      beginHistory('a'),
    );
    expect(undone(moved).present).toBe('a');
    expect(undone(changed(moved, 'e', 'move D4')).present).toBe('d');
    expect(undone(changed(changed(moved, 'e'), 'f')).present).toBe('e');
  });

  it('does not join a new change to one that was taken back to', () => {
    const back = undone(changed(changed(beginHistory('a'), 'b', 'move'), 'c'));
    expect(undone(changed(back, 'd', 'move')).present).toBe('b');
  });

  it('comes to the last value whatever was undone, when all is redone', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { maxLength: 50 }), fc.nat(60), (values, steps) => {
        let history = values.reduce((h, value) => changed(h, value), beginHistory(-1));
        const last = history.present;
        for (let k = 0; k < steps; k++) history = undone(history);
        for (let k = 0; k < steps; k++) history = redone(history);
        expect(history.present).toBe(last);
      }),
    );
  });
});
