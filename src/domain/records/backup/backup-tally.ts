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
  readonly #ofPan = new Map<PanId, { readonly all: number; readonly others: number }>();
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

  /** Counts a good part on this line. Returns a fault if the file holds too many; this one is then not taken. */
  take(part: BackupPart, line: number, repairs: readonly string[]): FileFault | null {
    const { pan } = part.kind === 'record' ? part.record : part.attachment;
    const isReading = part.kind === 'record' && part.record.kind === 'reading';
    if (this.#isTooMany(pan, isReading)) return 'too-many';
    if (repairs.length > 0) this.#noteRepairs({ line, pan, parts: repairs });
    if (part.kind === 'record') this.#records++;
    else this.#attachments++;
    return null;
  }

  #isTooMany(pan: PanId, isReading: boolean): boolean {
    const { all, others } = this.#ofPan.get(pan) ?? { all: 0, others: 0 };
    const count = { all: all + 1, others: others + (isReading ? 0 : 1) };
    this.#ofPan.set(pan, count);
    const { pans, parts, partsOfPan, othersOfPan } = this.limits;
    const isCrowded = count.all > partsOfPan || count.others > othersOfPan;
    return this.taken >= parts || this.#ofPan.size > pans || isCrowded;
  }

  #noteRepairs(repaired: RepairedLine): void {
    this.#repairedCount++;
    if (this.#repaired.length < this.limits.listed) this.#repaired.push(repaired);
  }

  /** Counts a line that gives nothing. Returns a fault if there are too many of them for a backup. */
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
