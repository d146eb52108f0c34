import { describe, expect, it } from 'vitest';
import { restoreAttachment } from '../../../../src/domain/records/restore/restore-attachment';
import * as fc from '../../../properties';
import { anyAttachment, damaged } from '../record-arbitraries';

const photo = {
  shape: 1,
  id: 'photo-1',
  pan: 'pan-1',
  at: 1,
  kind: 'photo',
  type: 'image/jpeg',
  bytes: new Uint8Array([1, 2, 3]),
};

describe('an attachment restored', () => {
  it('is unchanged if it was valid', () => {
    fc.assert(
      fc.property(anyAttachment, (attachment) => {
        expect(restoreAttachment(attachment)).toEqual({
          kind: 'restored',
          attachment,
          repairs: [],
        });
      }),
    );
  });

  it('never throws, and what comes out is valid', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), damaged(anyAttachment)), (stored) => {
        const result = restoreAttachment(stored);
        if (result.kind === 'left-out') return;
        const { attachment } = result;
        expect(restoreAttachment(attachment)).toEqual({ ...result, repairs: [] });
      }),
      { numRuns: 1_000 },
    );
  });

  it.each([
    ['an image that can hold script', { type: 'image/svg+xml' }, 'damaged'],
    ['a page', { type: 'text/html' }, 'damaged'],
    ['a sound that says it is a photo', { kind: 'sound' }, 'damaged'],
    ['empty', { bytes: new Uint8Array() }, 'damaged'],
    ['larger than any photo', { bytes: new Uint8Array(5 * 1024 * 1024) }, 'damaged'],
    ['no bytes', { bytes: [1, 2, 3] }, 'damaged'],
    ['of a later shape', { shape: 2 }, 'newer'],
  ])('is left out if it is %s', (_what, part, why) => {
    expect(restoreAttachment({ ...photo, ...part })).toMatchObject({ kind: 'left-out', why });
  });
});
