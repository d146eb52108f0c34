import { describe, expect, it } from 'vitest';
import { areSameCards, cardsByPan } from '../../../src/domain/rack/cards-by-pan';
import { panId } from '../../../src/domain/records/rack-records';
import { sampleCard } from '../../storage/rack/rack-sample';

const heron = { ...sampleCard(), name: 'Heron' };
const ibis = { ...sampleCard(panId('pan-2')), name: 'Ibis' };

describe('cards compared', () => {
  it('are the same in whatever order', () => {
    expect(areSameCards(cardsByPan([heron, ibis]), cardsByPan([{ ...ibis }, heron]))).toBe(true);
  });

  it.each([
    ['one is missing', [heron]],
    ['one is another pan', [heron, { ...ibis, pan: panId('pan-3') }]],
    ['one has changed', [heron, { ...ibis, need: 5 }]],
  ])('differ where %s', (_what, others) => {
    expect(areSameCards(cardsByPan([heron, ibis]), cardsByPan(others))).toBe(false);
  });
});
