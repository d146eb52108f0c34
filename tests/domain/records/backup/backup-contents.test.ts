import { describe, expect, it } from 'vitest';
import { ContentsTally, totalOf } from '../../../../src/domain/records/backup/backup-contents';
import type { BackupPart } from '../../../../src/domain/records/backup/backup-format';
import {
  type PanEdit,
  type PanFields,
  panId,
  recordId,
} from '../../../../src/domain/records/rack-records';
import { instant } from '../../../../src/domain/tuning/units';
import { sampleAttachment, sampleReading, sampleRound } from '../../../storage/rack/rack-sample';

const edit = (pan: string, at: number, fields: Partial<PanFields>): BackupPart => ({
  kind: 'record',
  record: {
    shape: 1,
    id: recordId(`edit-${pan}-${at}`),
    pan: panId(pan),
    at: instant(at),
    kind: 'pan-edit',
    fields,
    replaces: [],
  } satisfies PanEdit,
});
const contentsOf = (parts: readonly BackupPart[]) => {
  const tally = new ContentsTally();
  for (const part of parts) tally.add(part);
  return tally.contents;
};

describe('what a backup holds', () => {
  it('is counted pan by pan, with the rounds, readings, photos and sounds of each', () => {
    const round = sampleRound('round-1', panId('a'));
    const contents = contentsOf([
      { kind: 'record', record: round },
      { kind: 'record', record: sampleReading('reading-1', round, 60) },
      { kind: 'record', record: sampleReading('reading-2', round, 61) },
      edit('b', 1, { name: 'Second' }),
      {
        kind: 'attachment',
        attachment: { ...sampleAttachment('photo-1', 'photo', 9), pan: panId('b') },
      },
    ]);
    expect(contents).toMatchObject([
      { pan: 'a', name: '', rounds: 1, readings: 2, photos: 0, sounds: 0 },
      { pan: 'b', name: 'Second', rounds: 0, readings: 0, photos: 1, sounds: 0 },
    ]);
    expect(totalOf(contents)).toMatchObject({ rounds: 1, readings: 2, photos: 1, sounds: 0 });
  });

  it('has the newest name and owner, in whatever order the edits come', () => {
    const edits = [
      edit('a', 3, { name: 'New name' }),
      edit('a', 1, { name: 'Old name', owner: 'Old owner', remarks: 'dented' }),
      edit('a', 2, { owner: 'New owner', remarks: '' }),
    ];
    for (const parts of [edits, [...edits].reverse()]) {
      expect(contentsOf(parts)).toMatchObject([
        { name: 'New name', owner: 'New owner', hasRemarks: false },
      ]);
    }
  });

  it('names each owner of several pans once, and nobody where no owner is written down', () => {
    const owners = totalOf(
      contentsOf([
        edit('a', 1, { owner: 'The school' }),
        edit('b', 1, { owner: 'The school' }),
        edit('c', 1, { owner: '' }),
      ]),
    ).owners;
    expect(owners).toEqual(['The school']);
  });
});
