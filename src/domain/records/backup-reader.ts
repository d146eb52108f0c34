// Reads a backup piece by piece: gives out what is good, and says at the end what the file was.
import type { BackupHeader, BackupPart } from './backup-format';
import { type FileLine, LineCutter } from './backup-lines';
import type {
  BackupReport,
  BackupVerdict,
  FileFault,
  LeftOutLine,
  RepairedLine,
} from './backup-verdict';
import { Crc32 } from './crc-32';
import type { PanId } from './rack-records';
import {
  type LastLine,
  type LineFault,
  panOfLine,
  readHeaderLine,
  readLastLine,
  readPartLine,
} from './read-backup-line';

/** Limits against files that are made to fill the phone; the defaults hold the largest rack many times over. */
export interface BackupLimits {
  /** Longest line, characters: the largest attachment fits. */
  readonly line: number;
  /** Longest file, characters. */
  readonly characters: number;
  readonly parts: number;
  readonly pans: number;
  /** Records and attachments of one pan: a round of 30 notes on every day of nine years stays below. */
  readonly partsOfPan: number;
  /** How many more lines may be damaged, or empty, than are good: beyond it the file is no backup any more. */
  readonly damaged: number;
  /** The same for lines that are whole, but of a kind or shape that this version does not know. */
  readonly unknown: number;
  /** A file that has shown no header and no good line by then is foreign. */
  readonly foreignAfter: number;
  /** Left-out lines and repairs listed one by one; beyond it they are only counted. */
  readonly listed: number;
}

export const backupLimits: BackupLimits = {
  line: 6e6,
  characters: 8e9,
  parts: 1e7,
  pans: 20_000,
  partsOfPan: 100_000,
  damaged: 20_000,
  unknown: 100_000,
  foreignAfter: 1.2e7,
  listed: 100,
};

/** A line so many times longer than the longest was never one of ours, and may have no end. */
const endlessLines = 2;

/** Call `push` with each piece of text until there is no more or `isStopped`, then `end`. Never throws. */
export class BackupReader {
  readonly #cutter: LineCutter;
  readonly #sum = new Crc32();
  readonly #faults = new Set<FileFault>();
  readonly #leftOut: LeftOutLine[] = [];
  readonly #repaired: RepairedLine[] = [];
  #header: BackupHeader | null = null;
  #newer: number | null = null;
  #last: LastLine | null = null;
  #sumBeforeLast = '';
  #lines = 0;
  #characters = 0;
  #records = 0;
  #attachments = 0;
  #leftOutCount = 0;
  #damagedCount = 0;
  #emptyCount = 0;
  /** How much was taken of each pan. */
  readonly #ofPan = new Map<PanId, number>();
  #repairedCount = 0;
  #isStopped = false;

  constructor(readonly limits: BackupLimits = backupLimits) {
    this.#cutter = new LineCutter(limits.line);
  }

  /** Nothing more of the file needs to be read. */
  get isStopped(): boolean {
    return this.#isStopped;
  }

  /** The parts that `text` completes. Good ones only; they are not stored before `end` has said what the file is. */
  push(text: string): readonly BackupPart[] {
    const parts: BackupPart[] = [];
    if (this.#isStopped) return parts;
    this.#characters += text.length;
    for (const line of this.#cutter.push(text)) {
      this.#take(line, parts);
      if (this.#isStopped) return parts;
    }
    const isEndless = this.#cutter.openLength > endlessLines * this.limits.line;
    if (isEndless || this.#characters > this.limits.characters) this.#stop('too-long');
    const isOurs = this.#header !== null || this.#takenCount > 0;
    if (!isOurs && this.#characters > this.limits.foreignAfter) this.#isStopped = true;
    return parts;
  }

  /** The part that an unfinished last line holds, and what the file was. */
  end(): { readonly parts: readonly BackupPart[]; readonly verdict: BackupVerdict } {
    const parts: BackupPart[] = [];
    const rest = this.#isStopped ? null : this.#cutter.end();
    if (rest) this.#take(rest, parts);
    this.#isStopped = true;
    return { parts, verdict: this.#verdict() };
  }

  get #takenCount(): number {
    return this.#records + this.#attachments;
  }

  #stop(fault: FileFault): void {
    this.#faults.add(fault);
    this.#isStopped = true;
  }

  #take(line: FileLine, parts: BackupPart[]): void {
    this.#lines++;
    if (line.kind === 'too-long') {
      this.#leaveOut('too-long', '');
      return;
    }
    const text = this.#lines === 1 ? line.text.replace(/^\ufeff/, '') : line.text;
    if (this.#lines === 1 && this.#takeHeader(text)) {
      this.#addToSum(text);
      return;
    }
    const last = readLastLine(text);
    if (last && !this.#last) {
      this.#last = last;
      this.#sumBeforeLast = this.#sum.text;
      return;
    }
    this.#addToSum(text);
    // No backup has empty lines, but a program on the way may have put some in.
    if (text.trim() !== '') this.#takePart(text, parts);
    else if (++this.#emptyCount > this.limits.damaged + this.#takenCount) this.#stop('too-long');
  }

  #addToSum(text: string): void {
    this.#sum.add(text);
    this.#sum.add('\n');
  }

  #takeHeader(text: string): boolean {
    const line = readHeaderLine(text);
    switch (line.kind) {
      case 'header':
        this.#header = line.header;
        return true;
      case 'newer':
        this.#newer = line.version;
        this.#isStopped = true;
        return true;
      case 'none':
        return false;
    }
  }

  #takePart(text: string, parts: BackupPart[]): void {
    const line = readPartLine(text);
    if (line.kind === 'left-out') {
      // A first line that is no record was the header.
      if (this.#lines > 1 || line.why !== 'unreadable') this.#leaveOut(line.why, text);
      return;
    }
    if (this.#last) this.#faults.add('changed');
    if (this.#isTooMany(line.part)) {
      this.#stop('too-many');
      return;
    }
    if (line.repairs.length > 0) this.#noteRepairs(line.part, line.repairs);
    if (line.part.kind === 'record') this.#records++;
    else this.#attachments++;
    parts.push(line.part);
  }

  #isTooMany(part: BackupPart): boolean {
    const { pan } = part.kind === 'record' ? part.record : part.attachment;
    const count = (this.#ofPan.get(pan) ?? 0) + 1;
    this.#ofPan.set(pan, count);
    const { pans, parts, partsOfPan } = this.limits;
    return this.#takenCount >= parts || this.#ofPan.size > pans || count > partsOfPan;
  }

  #countDamaged(): void {
    this.#damagedCount++;
    if (this.#damagedCount > this.limits.damaged + this.#takenCount) this.#stop('too-damaged');
  }

  #leaveOut(why: LineFault, text: string): void {
    this.#leftOutCount++;
    const isUnknown = why === 'unknown-kind' || why === 'newer';
    if (!isUnknown) this.#countDamaged();
    else if (this.#leftOutCount > this.limits.unknown + this.#takenCount) this.#stop('too-damaged');
    if (this.#leftOut.length >= this.limits.listed) return;
    this.#leftOut.push({ line: this.#lines, why, pan: panOfLine(text) });
  }

  #noteRepairs(part: BackupPart, parts: readonly string[]): void {
    this.#repairedCount++;
    if (this.#repaired.length >= this.limits.listed) return;
    const { pan } = part.kind === 'record' ? part.record : part.attachment;
    this.#repaired.push({ line: this.#lines, pan, parts });
  }

  #verdict(): BackupVerdict {
    if (this.#newer !== null) return { kind: 'newer', version: this.#newer };
    const isEmpty = this.#characters === 0;
    if (this.#header === null && this.#takenCount === 0 && !isEmpty) return { kind: 'foreign' };
    const report = this.#report();
    if (this.#takenCount === 0) return { kind: 'nothing', report };
    const isWhole =
      report.faults.length === 0 && report.leftOutCount === 0 && report.repairedCount === 0;
    return { kind: isWhole ? 'whole' : 'in-part', report };
  }

  #report(): BackupReport {
    const faults = new Set(this.#faults);
    if (this.#header === null) faults.add('no-header');
    const taken = { records: this.#records, attachments: this.#attachments };
    if (this.#last === null) {
      faults.add('no-end');
    } else {
      const { counts, sum } = this.#last;
      const missing = counts.records + counts.attachments - this.#takenCount - this.#leftOutCount;
      if (missing > 0) faults.add('lines-missing');
      if (sum !== this.#sumBeforeLast) faults.add('changed');
    }
    return {
      header: this.#header,
      taken,
      faults: [...faults],
      leftOut: this.#leftOut,
      leftOutCount: this.#leftOutCount,
      repaired: this.#repaired,
      repairedCount: this.#repairedCount,
    };
  }
}
