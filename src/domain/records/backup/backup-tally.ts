// Counts what a backup gives and what is left out of it, and says when it is too much of either.

import type { PanId } from '../rack-records';
import type { BackupPart } from './backup-format';
import type { BackupLimits } from './backup-limits';
import type { BackupReport, FileFault, LeftOutLine, RepairedLine } from './backup-verdict';
import { type LineFault, panOfLine } from './read-backup-line';

type Tallied = Pick<
  BackupReport,
  'taken' | 'leftOut' | 'leftOutCount' | 'repaired' | 'repairedCount'
>;

export class BackupTally {
  readonly #leftOut: LeftOutLine[] = [];
  readonly #repaired: RepairedLine[] = [];
  /** How much was taken of each pan. */
  readonly #ofPan = new Map<PanId, number>();
  #records = 0;
  #attachments = 0;
  #leftOutCount = 0;
  #damagedCount = 0;
  #emptyCount = 0;
  #repairedCount = 0;

  constructor(readonly limits: BackupLimits) {}

  get taken(): number {
    return this.#records + this.#attachments;
  }

  /** A good part on this line. A fault: the file holds too many, and this one is not taken. */
  take(part: BackupPart, line: number, repairs: readonly string[]): FileFault | null {
    const { pan } = part.kind === 'record' ? part.record : part.attachment;
    if (this.#isTooMany(pan)) return 'too-many';
    if (repairs.length > 0) this.#noteRepairs({ line, pan, parts: repairs });
    if (part.kind === 'record') this.#records++;
    else this.#attachments++;
    return null;
  }

  #isTooMany(pan: PanId): boolean {
    const count = (this.#ofPan.get(pan) ?? 0) + 1;
    this.#ofPan.set(pan, count);
    const { pans, parts, partsOfPan } = this.limits;
    return this.taken >= parts || this.#ofPan.size > pans || count > partsOfPan;
  }

  #noteRepairs(repaired: RepairedLine): void {
    this.#repairedCount++;
    if (this.#repaired.length < this.limits.listed) this.#repaired.push(repaired);
  }

  /** A line that gives nothing. A fault: there are too many of them for a backup. */
  leaveOut(why: LineFault, line: number, text: string): FileFault | null {
    this.#leftOutCount++;
    if (this.#leftOut.length < this.limits.listed) {
      this.#leftOut.push({ line, why, pan: panOfLine(text) });
    }
    const isUnknown = why === 'unknown-kind' || why === 'newer';
    const count = isUnknown ? this.#leftOutCount : ++this.#damagedCount;
    const most = isUnknown ? this.limits.unknown : this.limits.damaged;
    return count > most + this.taken ? 'too-damaged' : null;
  }

  /** No backup has empty lines, but a program on the way may have put some in. */
  leaveOutEmpty(): FileFault | null {
    return ++this.#emptyCount > this.limits.damaged + this.taken ? 'too-long' : null;
  }

  report(): Tallied {
    return {
      taken: { records: this.#records, attachments: this.#attachments },
      leftOut: this.#leftOut,
      leftOutCount: this.#leftOutCount,
      repaired: this.#repaired,
      repairedCount: this.#repairedCount,
    };
  }
}
