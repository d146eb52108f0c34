import { describe, expect, it } from 'vitest';
import { cardCopyText, restoreCardCopy } from '../../../src/domain/rack/card-copy';
import { panId } from '../../../src/domain/records/rack-records';
import * as fc from '../../properties';
import { sampleCard } from '../../storage/rack/rack-sample';

const heron = { ...sampleCard(), name: 'Heron' };
const ibis = { ...sampleCard(panId('pan-2')), name: 'Ibis' };

describe('the copy of the cards', () => {
  it('comes back as it was', () => {
    expect(restoreCardCopy(cardCopyText([heron, ibis]))).toEqual([heron, ibis]);
  });

  it('leaves out a card that cannot be read', () => {
    const text = JSON.stringify([{ ...heron, need: 'much' }, ibis, null]);
    expect(restoreCardCopy(text)).toEqual([ibis]);
  });

  it('is empty where there is none, and never throws', () => {
    expect(restoreCardCopy(null)).toEqual([]);
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(restoreCardCopy(text)).toEqual([]);
      }),
    );
  });
});
