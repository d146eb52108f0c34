import { describe, expect, it } from 'vitest';
import { restoreRecord } from '../../../../src/domain/records/restore/restore-record';
import { sampleKnockCheck, sampleStopgap } from '../../../storage/rack/rack-sample';

const check = sampleKnockCheck('check-1');

describe('a knock check restored', () => {
  it('loses a look that it does not know, not the others', () => {
    const later = { look: 'paint', answer: 'yes', photo: null };
    expect(restoreRecord({ ...check, looks: [later, ...check.looks] })).toMatchObject({
      kind: 'restored',
      record: check,
      repairs: ['looks[0].look', 'looks[0]'],
    });
  });

  it('keeps an answer whose photo cannot be read', () => {
    const looks = [{ look: 'crack', answer: 'yes', photo: 7 }];
    expect(restoreRecord({ ...check, looks })).toMatchObject({
      kind: 'restored',
      record: { looks: [{ look: 'crack', answer: 'yes', photo: null }] },
    });
  });

  it.each([
    { kind: 'point', drum: 0, clock: 13, radius: 0.5 },
    { kind: 'point', drum: -1, clock: 3, radius: 0.5 },
    { kind: 'point', drum: 0, clock: 3, radius: Number.NaN },
    { kind: 'note', note: 200 },
    'rim',
  ])('does not know where the pan was hit if that is %j', (impact) => {
    expect(restoreRecord({ ...check, impact })).toMatchObject({
      kind: 'restored',
      record: { impact: null, looks: check.looks },
    });
  });
});

describe('a stopgap restored', () => {
  it('is left out if nobody can say on which note it is, or what it is', () => {
    const stopgap = sampleStopgap('stopgap-1');
    for (const bad of [{ note: null }, { stopgap: 'tape' }]) {
      expect(restoreRecord({ ...stopgap, ...bad })).toMatchObject({
        kind: 'left-out',
        why: 'damaged',
      });
    }
  });
});
