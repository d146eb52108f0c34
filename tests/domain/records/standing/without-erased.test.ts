import { describe, expect, it } from 'vitest';
import {
  type Erasure,
  type Mark,
  type MarkKind,
  type PanRecords,
  panId,
  type ReadingRecord,
  type RoundEnd,
  type RoundStart,
  recordId,
  roundId,
} from '../../../../src/domain/records/rack-records';
import { openRounds } from '../../../../src/domain/records/standing/open-rounds';
import { standingMarks } from '../../../../src/domain/records/standing/standing-marks';
import {
  erasedIds,
  readingsWithoutErased,
  withoutErased,
} from '../../../../src/domain/records/standing/without-erased';
import { hertz, instant, midiNote } from '../../../../src/domain/tuning/units';
import * as fc from '../../../properties';
import { samplePanRecords } from '../../../storage/rack/rack-sample';
import { anyErasure } from '../record-arbitraries';

const pan = panId('pan-a');
const head = (id: string, at: number) =>
  ({ shape: 1, id: recordId(id), pan, at: instant(at) }) as const;
const erasure = (id: string, target: string, at = 1): Erasure => ({
  ...head(id, at),
  kind: 'erasure',
  target: recordId(target),
});
const round = (id: string, at: number): RoundStart => ({
  ...head(id, at),
  kind: 'round',
  way: 'guided',
  order: [],
  conditions: { temperature: null, standing: null },
  a4: hertz(440),
});
const end = (id: string, of: string): RoundEnd => ({
  ...head(id, 9),
  kind: 'round-end',
  round: roundId(of),
  ending: 'finished',
});
const mark = (id: string, at: number, kind: MarkKind, note = 60, of?: string): Mark => ({
  ...head(id, at),
  kind: 'mark',
  round: of === undefined ? null : roundId(of),
  note: midiNote(note),
  mark: kind,
});
const records = (parts: Partial<PanRecords>): PanRecords => samplePanRecords({ pan, ...parts });

describe('an erasure', () => {
  it('erases its target', () => {
    expect([...erasedIds([erasure('e', 'x')])]).toEqual(['x']);
  });

  it('is taken back by an erasure of it, whatever the clocks said, and that one too', () => {
    const back = [erasure('e', 'x', 9), erasure('f', 'e', 1)];
    expect(erasedIds(back).has('x')).toBe(false);
    expect(erasedIds([...back, erasure('g', 'f', 5)]).has('x')).toBe(true);
  });

  it('has a meaning that does not depend on the order, even in circles', () => {
    const list = fc.uniqueArray(anyErasure, { maxLength: 12, selector: ({ id }) => id });
    fc.assert(
      fc.property(
        list.chain((all) =>
          fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
        ),
        ([one, other]) => {
          expect([...erasedIds(one)].sort()).toEqual([...erasedIds(other)].sort());
        },
      ),
    );
    const circle = [erasure('a', 'b'), erasure('b', 'a'), erasure('c', 'c')];
    expect([...erasedIds(circle)].sort()).toEqual(['a', 'b', 'c']);
  });

  it('in a row of a hundred thousand takes no long time', () => {
    const row = Array.from({ length: 1e5 }, (_, k) => erasure(`e${k}`, `e${k + 1}`));
    expect(erasedIds(row).size).toBe(5e4);
  });
});

describe('an erased round', () => {
  const given = records({
    rounds: [round('r', 1), round('s', 2)],
    ends: [end('end-s', 's')],
    marks: [mark('m', 3, 'dead', 60, 's'), mark('n', 3, 'dead', 62)],
    erasures: [erasure('e', 's')],
  });

  it('takes its end, marks and readings with it, and nothing else', () => {
    const left = withoutErased(given);
    expect(left.rounds.map(({ id }) => id)).toEqual(['r']);
    expect(left.ends).toEqual([]);
    expect(left.marks.map(({ id }) => id)).toEqual(['n']);
    const reading = (id: string, of: string | null) =>
      ({ ...head(id, 4), round: of }) as ReadingRecord;
    const readings = [reading('1', 's'), reading('2', 'r'), reading('3', null), reading('e', 'r')];
    const kept = readingsWithoutErased(readings, given.erasures);
    expect(kept.map(({ id }) => id)).toEqual(['2', '3', 'e']);
  });
});

describe('open rounds', () => {
  it('are those without an end, newest first', () => {
    const rounds = [round('a', 1), round('b', 3), round('c', 2)];
    const open = openRounds(records({ rounds, ends: [end('x', 'b')] }));
    expect(open.map(({ id }) => id)).toEqual(['c', 'a']);
  });

  it('are none that were erased, and one again whose end was erased', () => {
    const rounds = [round('a', 1), round('b', 2)];
    const erasures = [erasure('e', 'a'), erasure('f', 'x')];
    const open = openRounds(records({ rounds, ends: [end('x', 'b')], erasures }));
    expect(open.map(({ id }) => id)).toEqual(['b']);
  });
});

describe('the standing mark of a note', () => {
  const of = (...marks: Mark[]) => [...standingMarks(records({ marks }))];

  it('is its newest one, whatever the order', () => {
    const [old, newer] = [mark('a', 1, 'dead'), mark('b', 2, 'buzzing')];
    expect(of(newer, old)).toEqual([[60, newer]]);
    expect(of(old, newer)).toEqual([[60, newer]]);
  });

  it('is none after `none`, and the one before again when that is erased', () => {
    const marks = [mark('a', 1, 'dead'), mark('b', 2, 'none'), mark('c', 1, 'cracked', 61)];
    expect(of(...marks).map(([note]) => note)).toEqual([61]);
    const again = standingMarks(records({ marks, erasures: [erasure('e', 'b')] }));
    expect(again.get(midiNote(60))?.mark).toBe('dead');
  });
});
