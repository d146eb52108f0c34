import { describe, expect, it } from 'vitest';
import { attachmentId, recordId } from '../../../../src/domain/records/rack-records';
import { listedFor, takenOut } from '../../../../src/domain/records/standing/taken-out';
import { instant } from '../../../../src/domain/tuning/units';
import {
  at,
  sampleEdit,
  sampleErasure,
  sampleMark,
  samplePanRecords,
  sampleRound,
  sampleVisit,
} from '../../../storage/rack/rack-sample';

const soon = instant(at(0) + 1e6);
const kinds = (records: Parameters<typeof takenOut>[0], now = soon) =>
  takenOut(records, now).map(({ kind, by }) => `${kind} by ${by}`);

describe('what was taken out', () => {
  it('names visits and rounds that are erased, by the erasure that is to be erased', () => {
    const records = samplePanRecords({
      visits: [sampleVisit('visit')],
      rounds: [sampleRound('round')],
      erasures: [sampleErasure('e-1', 'visit'), sampleErasure('e-2', 'round')],
    });
    expect(kinds(records).sort()).toEqual(['round by e-2', 'visit by e-1']);
  });

  it('forgets what was put back', () => {
    const records = samplePanRecords({
      visits: [sampleVisit('visit')],
      erasures: [sampleErasure('e-1', 'visit'), sampleErasure('e-2', 'e-1')],
    });
    expect(kinds(records)).toEqual([]);
  });

  it('says nothing of readings and ends, which the app erases by itself', () => {
    const records = samplePanRecords({ erasures: [sampleErasure('e-1', 'reading-1')] });
    expect(kinds(records)).toEqual([]);
  });

  it('names a photo that was removed with the photo it was, and the pan that is off the rack', () => {
    const edit = sampleEdit('edit-1', 'Heron');
    const later = (id: string, seconds: number, fields: object) => ({
      ...edit,
      id: recordId(id),
      at: at(seconds),
      fields,
    });
    const photo = attachmentId('photo-1');
    const edits = [
      { ...edit, fields: { ...edit.fields, photo } },
      later('edit-2', 5, { photo: null }),
      later('edit-3', 6, { isRemoved: true }),
    ];
    expect(takenOut(samplePanRecords({ edits }), soon)).toMatchObject([
      { kind: 'pan', by: 'edit-3' },
      { kind: 'photo', photo, by: 'edit-2' },
    ]);
    const erasures = [sampleErasure('e-1', 'edit-2')];
    expect(kinds(samplePanRecords({ edits, erasures }))).toEqual(['pan by edit-3']);
  });

  it('names marks that stand, each note once', () => {
    const one = sampleMark('mark-1', 72);
    const marks = [one, { ...sampleMark('mark-2', 72), at: at(125) }, sampleMark('mark-3', 74)];
    expect(kinds(samplePanRecords({ marks })).sort()).toEqual(['mark by mark-2', 'mark by mark-3']);
  });

  it('lets go of it after a week', () => {
    const erasure = sampleErasure('e-1', 'visit');
    const records = samplePanRecords({ visits: [sampleVisit('visit')], erasures: [erasure] });
    expect(kinds(records, instant(erasure.at + listedFor))).toHaveLength(1);
    expect(kinds(records, instant(erasure.at + listedFor + 1))).toEqual([]);
  });
});
