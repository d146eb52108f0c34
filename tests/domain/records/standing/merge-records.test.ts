import { describe, expect, it } from 'vitest';
import type { Attachment } from '../../../../src/domain/records/rack-records';
import {
  chosenAttachment,
  mergeRecords,
} from '../../../../src/domain/records/standing/merge-records';
import * as fc from '../../../properties';
import { anyAttachment, anyRecord } from '../record-arbitraries';

/** Some thirty ids for up to twelve records: the same id often comes with different contents. */
const some = fc.array(anyRecord, { maxLength: 12 });

describe('two phones’ records merged', () => {
  it('are the same whichever comes first', () => {
    fc.assert(
      fc.property(some, some, (ours, theirs) => {
        expect(mergeRecords(ours, theirs)).toEqual(mergeRecords(theirs, ours));
      }),
    );
  });

  it('are the same in whatever order three are merged', () => {
    fc.assert(
      fc.property(some, some, some, (one, two, three) => {
        const left = mergeRecords(mergeRecords(one, two), three);
        expect(mergeRecords(one, mergeRecords(two, three))).toEqual(left);
      }),
    );
  });

  it('are the same however often they are merged', () => {
    fc.assert(
      fc.property(some, some, (ours, theirs) => {
        const merged = mergeRecords(ours, theirs);
        expect(mergeRecords(merged, theirs)).toEqual(merged);
        expect(mergeRecords(merged, merged)).toEqual(merged);
      }),
    );
  });

  it('hold every id of both once, and nothing else', () => {
    fc.assert(
      fc.property(some, some, (ours, theirs) => {
        const ids = [...ours, ...theirs].map(({ id }) => id);
        const merged = mergeRecords(ours, theirs);
        expect(merged.map(({ id }) => id).sort()).toEqual([...new Set(ids)].sort());
        for (const record of merged) expect([...ours, ...theirs]).toContain(record);
      }),
    );
  });

  it('prefer of two records with the same id the one of which nothing was lost', () => {
    const whole = fc.sample(anyRecord, { numRuns: 50, seed: 3 });
    for (const record of whole) {
      const more = Object.assign({}, record, { later: 1 });
      expect(mergeRecords([record], [more])).toEqual([more]);
      expect(mergeRecords([more], [record])).toEqual([more]);
    }
  });
});

describe('of two attachments with the same id', () => {
  it('the same is chosen whichever comes first, and of three in whatever order', () => {
    const same: fc.Arbitrary<Attachment> = fc
      .tuple(anyAttachment, fc.uint8Array({ minLength: 1, maxLength: 3 }))
      .map(([attachment, bytes]) => ({ ...attachment, bytes: new Uint8Array(bytes) }));
    fc.assert(
      fc.property(same, same, same, (one, two, three) => {
        expect(chosenAttachment(one, two)).toEqual(chosenAttachment(two, one));
        expect(chosenAttachment(chosenAttachment(one, two), three)).toEqual(
          chosenAttachment(one, chosenAttachment(two, three)),
        );
        expect(chosenAttachment(one, one)).toBe(one);
      }),
    );
  });
});
