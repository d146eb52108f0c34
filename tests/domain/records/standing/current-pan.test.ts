import { describe, expect, it } from 'vitest';
import {
  type Erasure,
  type PanEdit,
  type PanFields,
  panId,
  recordId,
} from '../../../../src/domain/records/rack-records';
import {
  currentPan,
  editOf,
  fieldConflicts,
} from '../../../../src/domain/records/standing/current-pan';
import { instant } from '../../../../src/domain/tuning/units';
import * as fc from '../../../properties';
import { panFieldsSample } from '../pan-fields-sample';
import { anyErasure, anyPanEdit, anyPanFields } from '../record-arbitraries';

const pan = panId('pan-a');
const all = panFieldsSample({
  name: 'Loft lead',
  layout: { id: 'x', name: 'X', drums: [], source: '' },
});

/** A phone that writes edits knowing those it has seen. */
function write(
  edits: readonly PanEdit[],
  changes: Partial<PanFields>,
  id: string,
  at: number,
): readonly PanEdit[] {
  const edit = editOf(pan, { edits, erasures: [] }, changes, {
    id: recordId(id),
    at: instant(at),
  });
  return [...edits, edit];
}

const erasureOf = (target: string, id = `no-${target}`): Erasure => ({
  shape: 1,
  id: recordId(id),
  pan,
  at: instant(0),
  kind: 'erasure',
  target: recordId(target),
});

const fieldsOf = (edits: readonly PanEdit[], erasures: readonly Erasure[] = []) =>
  currentPan({ edits, erasures }).fields;
const conflictsOf = (edits: readonly PanEdit[], erasures: readonly Erasure[] = []) =>
  fieldConflicts({ edits, erasures });

const first = write([], all, 'first', 1);

describe('a pan that one phone edits', () => {
  it('has the fields of its first edit', () => {
    expect(currentPan({ edits: first, erasures: [] })).toEqual({
      fields: all,
      conflicts: [],
      missing: [],
    });
  });

  it('has the newest value of each field and the rest as before', () => {
    const edits = write(write(first, { name: 'A', owner: 'B' }, 'e2', 2), { name: 'C' }, 'e3', 3);
    expect(fieldsOf(edits)).toEqual({ ...all, name: 'C', owner: 'B' });
    expect(conflictsOf(edits)).toEqual([]);
  });

  it('has the last written value even when the clock was turned back', () => {
    expect(
      fieldsOf(write(write(first, { name: 'A' }, 'e2', 99), { name: 'B' }, 'e3', 5)).name,
    ).toBe('B');
  });

  it('never has a conflict, whatever is edited', () => {
    const changes = fc.array(
      anyPanFields.chain((fields) =>
        fc
          .subarray(Object.keys(fields) as (keyof PanFields)[])
          .map(
            (names): Partial<PanFields> =>
              Object.fromEntries(names.map((name) => [name, fields[name]])),
          ),
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(changes, (list) => {
        const edits = list.reduce((sum, each, k) => write(sum, each, `e${k}`, 9 - k), first);
        expect(conflictsOf(edits)).toEqual([]);
        expect(fieldsOf(edits)).toEqual(Object.assign({}, all, ...list));
      }),
    );
  });
});

describe('a pan that two phones edited without knowing of each other', () => {
  const ours = write(first, { name: 'Ours', owner: 'Section 2' }, 'ours', 5);
  const theirs = write(first, { name: 'Theirs', serial: '7' }, 'theirs', 4);
  const both = [...ours, ...theirs.slice(1)];

  it('keeps both values of the field both wrote, the newer one shown', () => {
    expect(conflictsOf(both)).toEqual([
      {
        field: 'name',
        values: [
          { value: 'Ours', at: 5 },
          { value: 'Theirs', at: 4 },
        ],
      },
    ]);
    expect(fieldsOf(both)).toEqual({ ...all, name: 'Ours', owner: 'Section 2', serial: '7' });
  });

  it('is in no conflict where both wrote the same', () => {
    const same = write(first, { name: 'Ours' }, 'same', 4);
    expect(conflictsOf([...ours, ...same.slice(1)])).toEqual([]);
  });

  it('is at peace once the right value was written by somebody who knew both', () => {
    const peace = write(both, { name: 'Theirs' }, 'peace', 6);
    expect(peace.at(-1)?.replaces).toEqual(['ours', 'theirs']);
    expect(conflictsOf(peace)).toEqual([]);
    expect(fieldsOf(peace).name).toBe('Theirs');
  });

  it('is in conflict again if a third phone did not know of the peace', () => {
    const peace = write(both, { name: 'Peace' }, 'peace', 6);
    const third = write(ours, { name: 'Third' }, 'third', 7).slice(-1);
    const [conflict] = conflictsOf([...peace, ...third]);
    expect(conflict?.values.map(({ value }) => value)).toEqual(['Third', 'Peace']);
  });
});

describe('an erased edit', () => {
  const edits = write(write(first, { name: 'A' }, 'e2', 2), { name: 'B' }, 'e3', 3);

  it('gives the value before it back if it was the last', () => {
    expect(fieldsOf(edits, [erasureOf('e3')]).name).toBe('A');
  });

  it('changes nothing if it was replaced already', () => {
    expect(fieldsOf(edits, [erasureOf('e2')]).name).toBe('B');
    expect(conflictsOf(edits, [erasureOf('e2')])).toEqual([]);
  });
});

describe('the fields of a pan', () => {
  it('that no edit holds any more are empty and named', () => {
    const [lost] = first;
    const { name: _, ...fields } = lost?.fields ?? {};
    const result = currentPan({ edits: [{ ...lost, fields } as PanEdit], erasures: [] });
    expect(result.fields.name).toBe('');
    expect(result.missing).toEqual(['name']);
  });

  it('do not depend on the order of edits and erasures, even if those replace each other in circles', () => {
    const history = fc.record({
      edits: fc.uniqueArray(anyPanEdit, { maxLength: 8, selector: ({ id }) => id }),
      erasures: fc.uniqueArray(anyErasure, { maxLength: 4, selector: ({ id }) => id }),
    });
    const shuffled = history.chain(({ edits, erasures }) =>
      fc.tuple(
        fc.constant({ edits, erasures }),
        fc.shuffledSubarray(edits, { minLength: edits.length }),
        fc.shuffledSubarray(erasures, { minLength: erasures.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([known, edits, erasures]) => {
        expect(currentPan({ edits, erasures })).toEqual(currentPan(known));
      }),
    );
  });

  it('are found though edits replace each other in a circle', () => {
    const circle = (id: string, other: string, at: number): PanEdit => ({
      shape: 1,
      id: recordId(id),
      pan,
      at: instant(at),
      kind: 'pan-edit',
      fields: { ...all, name: id },
      replaces: [recordId(other), recordId(id)],
    });
    expect(fieldsOf([circle('a', 'b', 1), circle('b', 'a', 2)]).name).toBe('b');
  });
});
