// Reads a backup piece by piece: gives out what is good, and says at the end what the file was.
import type { BackupHeader, BackupPart } from './backup-format';
import { type BackupLimits, backupLimits } from './backup-limits';
import { type FileLine, LineCutter } from './backup-lines';
import { BackupTally } from './backup-tally';
import type { BackupReport, BackupVerdict, FileFault } from './backup-verdict';
import { Crc32 } from './crc-32';
import { type LastLine, readHeaderLine, readLastLine, readPartLine } from './read-backup-line';

/** A line this many times longer than the longest is not one of ours and may never end (chosen, no source). */
const endlessLines = 2;

/** Call `push` with each piece of text until there are no more or `isStopped` is true, then `end`. Never throws. */
export class BackupReader {
  readonly #cutter: LineCutter;
  readonly #sum = new Crc32();
  readonly #faults = new Set<FileFault>();
  readonly #tally: BackupTally;
  #header: BackupHeader | null = null;
  #newer: number | null = null;
  #last: LastLine | null = null;
  #sumBeforeLast = '';
  #lines = 0;
  #characters = 0;
  #isStopped = false;

  constructor(readonly limits: BackupLimits = backupLimits) {
    this.#cutter = new LineCutter(limits.line);
    this.#tally = new BackupTally(limits);
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
    const isOurs = this.#header !== null || this.#tally.taken > 0;
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

  /** A fault that ends the reading; null is none. */
  #stop(fault: FileFault | null): void {
    if (fault === null) return;
    this.#faults.add(fault);
    this.#isStopped = true;
  }

  #take(line: FileLine, parts: BackupPart[]): void {
    this.#lines++;
    if (line.kind === 'too-long') {
      this.#stop(this.#tally.leaveOut('too-long', this.#lines, ''));
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
    if (text.trim() !== '') this.#takePart(text, parts);
    else this.#stop(this.#tally.leaveOutEmpty());
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
      if (this.#lines > 1 || line.why !== 'unreadable') {
        this.#stop(this.#tally.leaveOut(line.why, this.#lines, text));
      }
      return;
    }
    if (this.#last) this.#faults.add('changed');
    const fault = this.#tally.take(line.part, this.#lines, line.repairs);
    if (fault === null) parts.push(line.part);
    else this.#stop(fault);
  }

  #verdict(): BackupVerdict {
    if (this.#newer !== null) return { kind: 'newer', version: this.#newer };
    const isEmpty = this.#characters === 0;
    if (this.#header === null && this.#tally.taken === 0 && !isEmpty) return { kind: 'foreign' };
    const report = this.#report();
    if (this.#tally.taken === 0) return { kind: 'nothing', report };
    const isWhole =
      report.faults.length === 0 && report.leftOutCount === 0 && report.repairedCount === 0;
    return { kind: isWhole ? 'whole' : 'in-part', report };
  }

  #report(): BackupReport {
    const faults = new Set(this.#faults);
    if (this.#header === null) faults.add('no-header');
    const tally = this.#tally.report();
    if (this.#last === null) {
      faults.add('no-end');
    } else {
      const { counts, sum } = this.#last;
      const missing = counts.records + counts.attachments - this.#tally.taken - tally.leftOutCount;
      if (missing > 0) faults.add('lines-missing');
      if (sum !== this.#sumBeforeLast) faults.add('changed');
    }
    return { header: this.#header, faults: [...faults], ...tally };
  }
}
