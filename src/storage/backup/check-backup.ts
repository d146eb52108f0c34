// Reads a backup from end to end before anything that is kept is touched.
import type { BackupCheck, BackupRefusal, Progress } from '../../domain/ports/backup-files';
import type { FileOnHand } from '../../domain/ports/file-handout';
import { ContentsTally, totalOf } from '../../domain/records/backup/backup-contents';
import type { BackupPart } from '../../domain/records/backup/backup-format';
import { backupLimits } from '../../domain/records/backup/backup-limits';
import { BackupReader } from '../../domain/records/backup/backup-reader';
import { CrowdedPan } from '../../domain/records/backup/crowded-pan';
import { noEffects } from '../../domain/records/merging/file-effects';
import type { Database } from '../database/database';
import { Foresight } from './foresee';
import { CannotUnpack, TooLarge, unpackText } from './unpack-file';

/** How many records are compared with what is kept in one go (chosen, no source). */
const comparedAtOnce = 2000;

/** What the file is, and what it would do to what is kept; nothing is written. Never rejects. */
export async function checkBackup(
  database: Database,
  file: FileOnHand,
  onProgress: Progress,
): Promise<BackupCheck> {
  if (!(file instanceof Blob)) return refused('unreadable');
  const reader = new BackupReader();
  const tally = new ContentsTally();
  const compared = new Foresight(database);
  // If the store cannot be read, it says so itself when the file is taken in.
  let canCompare = true;
  const compare = async (parts: readonly BackupPart[]) => {
    if (!canCompare) return;
    canCompare = await compared.look(parts).then(
      () => true,
      () => false,
    );
  };
  try {
    if (await isCrowded(file)) return refused('too-large');
    let batch: BackupPart[] = [];
    for await (const { text, read } of unpackText(file)) {
      for (const part of reader.push(text)) {
        tally.add(part);
        batch.push(part);
      }
      if (batch.length >= comparedAtOnce || batch.some(({ kind }) => kind === 'attachment')) {
        await compare(batch);
        batch = [];
      }
      onProgress(read / file.size);
      if (reader.isStopped) break;
    }
    await compare(batch);
  } catch (error) {
    return refused(refusalOf(error));
  }
  const { parts, verdict } = reader.end();
  for (const part of parts) tally.add(part);
  await compare(parts);
  if (verdict.kind === 'foreign' || verdict.kind === 'newer') return refused(verdict.kind);
  const { report } = verdict;
  if (report.faults.some((fault) => fault === 'too-long' || fault === 'too-many')) {
    return refused('too-large');
  }
  if (verdict.kind === 'nothing') return refused('nothing');
  if (report.faults.includes('too-damaged')) return refused('damaged');
  const { contents } = tally;
  const pans = contents.map(({ pan }) => pan);
  const { readings } = totalOf(contents);
  const isWhole = verdict.kind === 'whole';
  const effects = canCompare ? await compared.effects().catch(() => noEffects) : noEffects;
  return { kind: 'fine', backup: { file, isWhole, report, pans, readings, contents, effects } };
}

/** Whether the beginning of the file already holds more of one pan than any file of ours does. */
async function isCrowded(file: Blob): Promise<boolean> {
  const look = new CrowdedPan(backupLimits);
  for await (const { text } of unpackText(file)) {
    look.push(text);
    if (look.isOver) break;
  }
  return look.isFound;
}

const refused = (why: BackupRefusal): BackupCheck => ({ kind: 'refused', why });

function refusalOf(error: unknown): BackupRefusal {
  if (error instanceof TooLarge) return 'too-large';
  return error instanceof CannotUnpack ? 'packed' : 'unreadable';
}
