import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { hertz } from '../../../src/domain/tuning/units';
import { Database } from '../../../src/storage/database/database';
import { IndexedDbSettings } from '../../../src/storage/settings/indexed-db-settings';

it('settings that two windows change, each another one, are all kept', async () => {
  const [one, other] = [new Database(), new Database()].map((each) => new IndexedDbSettings(each));
  await Promise.all([one?.load(), other?.load()]);
  await Promise.all([one?.save({ a4: hertz(442) }), other?.save({ theme: 'dark' })]);
  await one?.save({ keepsSound: true });
  expect(await other?.load()).toMatchObject({
    kind: 'loaded',
    settings: { a4: 442, theme: 'dark', keepsSound: true, announcement: 'nothing' },
  });
});
