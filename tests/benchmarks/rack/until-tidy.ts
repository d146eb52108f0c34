// Waits until Chromium's database (LevelDB) has tidied up what was written.
//
// Writing years of records at once leaves more behind than it can merge meanwhile, among it the marks of everything
// deleted from its own journal, through which every start must look. It merges them while the browser is open and
// breaks off when it ends: starts of a second or two, as of this benchmark, would never let it finish, and each would
// pay for it. A phone is open for minutes.
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const quietSeconds = 6;
const longestSeconds = 180;

/** Resolves once no file of the databases in `profile` has changed for a while, at the latest after three minutes. */
export async function untilTidy(profile: string): Promise<void> {
  const folder = join(profile, 'Default', 'IndexedDB');
  const end = Date.now() + 1000 * longestSeconds;
  while (Date.now() < end && secondsSinceChange(folder) < quietSeconds) {
    await new Promise((done) => setTimeout(done, 1000));
  }
}

/** A file may vanish between its listing and the look at it. */
function secondsSinceChange(folder: string): number {
  const changes = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(
    (name) => statSync(join(folder, name), { throwIfNoEntry: false })?.mtimeMs ?? 0,
  );
  return (Date.now() - Math.max(...changes)) / 1000;
}
