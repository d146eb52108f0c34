// Reads a backup from end to end before anything that is kept is touched.
import type { BackupCheck, BackupRefusal, Progress } from '../../domain/ports/backup-files';
import type { FileOnHand } from '../../domain/ports/file-handout';
import { ContentsTally, totalOf } from '../../domain/records/backup/backup-contents';
import { backupLimits } from '../../domain/records/backup/backup-limits';
import { BackupReader } from '../../domain/records/backup/backup-reader';
import { CrowdedPan } from '../../domain/records/backup/crowded-pan';
import { CannotUnpack, TooLarge, unpackText } from './unpack-file';

/** What the file is; nothing but the file is read. Never rejects. */
export async function checkBackup(file: FileOnHand, onProgress: Progress): Promise<BackupCheck> {
  if (!(file instanceof Blob)) return refused('unreadable');
  const reader = new BackupReader();
  const tally = new ContentsTally();
  try {
    if (await isCrowded(file)) return refused('too-large');
    for await (const { text, read } of unpackText(file)) {
      for (const part of reader.push(text)) tally.add(part);
      onProgress(read / file.size);
      if (reader.isStopped) break;
    }
  } catch (error) {
    return refused(refusalOf(error));
  }
  const { parts, verdict } = reader.end();
  for (const part of parts) tally.add(part);
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
  return { kind: 'fine', backup: { file, isWhole, report, pans, readings, contents } };
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
