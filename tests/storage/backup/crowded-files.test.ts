// Files with more than any band owns are refused before anything is compared or taken.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import type { RackRecord } from '../../../src/domain/records/rack-records';
import { panId } from '../../../src/domain/records/rack-records';
import { backupFiles } from '../../../src/storage/backup/backup-files';
import { Database } from '../../../src/storage/database/database';
import { RackChanges } from '../../../src/storage/rack/rack-changes';
import { backupRefusalWords } from '../../../src/ui/words/keeping/exchange-words';
import { written } from '../../domain/records/backup/backup-sample';
import { at, sampleEdit, sampleMark } from '../rack/rack-sample';

const check = (records: readonly RackRecord[]) => {
  globalThis.indexedDB = new IDBFactory();
  const clock = { now: () => at(0) };
  const changes = new RackChanges();
  const files = backupFiles({ database: new Database(), changes, clock, appVersion: '0.1.0' });
  const text = written(records.map((record) => ({ kind: 'record', record }) as const));
  return files.check(new File([text], 'rack.json'));
};

it('15,000 pans without a name are refused at once, with a sentence', async () => {
  const nameless = Array.from({ length: 15_000 }, (_, k) => {
    const edit = sampleEdit(`edit-${k}`, '', panId(`pan-${k}`));
    return { ...edit, fields: { isRemoved: false } };
  });
  // Processor time: a busy machine must not decide.
  const begun = process.cpuUsage();
  const answer = await check(nameless);
  const { user } = process.cpuUsage(begun);
  expect(answer).toEqual({ kind: 'refused', why: 'too-large' });
  expect(backupRefusalWords['too-large']).toContain('more than any band can own');
  expect(user / 1000).toBeLessThan(5_000);
});

it('more marks than anybody makes on one pan are refused', async () => {
  const marks = Array.from({ length: 20_001 }, (_, k) => sampleMark(`mark-${k}`));
  expect(await check(marks)).toEqual({ kind: 'refused', why: 'too-large' });
});
