// Reads a backup from end to end before anything that is kept is touched.
import type { BackupCheck, BackupRefusal, Progress } from '../domain/ports/backup-files';
import type { FileOnHand } from '../domain/ports/file-handout';
import { BackupReader } from '../domain/records/backup-reader';
import type { PanId } from '../domain/records/rack-records';
import { CannotUnpack, TooLarge, unpackText } from './unpack-file';

/** What the file is; nothing but the file is read. Never rejects. */
export async function checkBackup(file: FileOnHand, onProgress: Progress): Promise<BackupCheck> {
  if (!(file instanceof Blob)) return refused('unreadable');
  const reader = new BackupReader();
  const pans = new Set<PanId>();
  let readings = 0;
  const note = (parts: ReturnType<BackupReader['push']>) => {
    for (const part of parts) {
      pans.add(part.kind === 'record' ? part.record.pan : part.attachment.pan);
      if (part.kind === 'record' && part.record.kind === 'reading') readings += 1;
    }
  };
  try {
    for await (const { text, read } of unpackText(file)) {
      note(reader.push(text));
      onProgress(read / file.size);
      if (reader.isStopped) break;
    }
  } catch (error) {
    return refused(refusalOf(error));
  }
  const { parts, verdict } = reader.end();
  note(parts);
  switch (verdict.kind) {
    case 'foreign':
    case 'newer':
    case 'nothing':
      return refused(verdict.kind);
    case 'whole':
    case 'in-part': {
      const { report } = verdict;
      if (report.faults.some((fault) => fault === 'too-long' || fault === 'too-many')) {
        return refused('too-large');
      }
      const isWhole = verdict.kind === 'whole';
      return { kind: 'fine', backup: { file, isWhole, report, pans: [...pans], readings } };
    }
  }
}

const refused = (why: BackupRefusal): BackupCheck => ({ kind: 'refused', why });

function refusalOf(error: unknown): BackupRefusal {
  if (error instanceof TooLarge) return 'too-large';
  return error instanceof CannotUnpack ? 'packed' : 'unreadable';
}
