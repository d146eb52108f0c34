// Writes a backup piece by piece, so that a rack of any size needs little memory.

import {
  type BackupHeader,
  type BackupPart,
  backupFormat,
  backupVersion,
  headerEnd,
  lastLineStart,
} from './backup-format';
import { toBase64 } from './base64';
import { Crc32, crc32Of } from './crc-32';

/** Call `begin`, then `add` for every record and attachment, then `end`: their texts one after the other are the file. */
export class BackupWriter {
  readonly #sum = new Crc32();
  #records = 0;
  #attachments = 0;

  begin(header: BackupHeader): string {
    const { made, app, pans } = header;
    const text = asciiJson({ format: backupFormat, version: backupVersion, made, app, pans });
    return this.#summed(`${text.slice(0, -1)},${headerEnd}\n`);
  }

  add(part: BackupPart): string {
    const separator = this.#isFirst ? '' : ',\n';
    if (part.kind === 'record') this.#records++;
    else this.#attachments++;
    const text = asciiJson(dataOf(part));
    return this.#summed(`${separator}["${crc32Of(text)}",${text}]`);
  }

  end(): string {
    const lineEnd = this.#isFirst ? '' : this.#summed('\n');
    const counts = JSON.stringify({ records: this.#records, attachments: this.#attachments });
    return `${lineEnd}${lastLineStart}${counts},"sum":"${this.#sum.text}"}\n`;
  }

  get #isFirst(): boolean {
    return this.#records + this.#attachments === 0;
  }

  #summed(text: string): string {
    this.#sum.add(text);
    return text;
  }
}

function dataOf(part: BackupPart): unknown {
  switch (part.kind) {
    case 'record':
      return part.record;
    case 'attachment':
      return { ...part.attachment, bytes: toBase64(part.attachment.bytes) };
  }
}

/** JSON in which every character beyond ASCII is escaped. */
const asciiJson = (value: unknown): string =>
  JSON.stringify(value).replace(
    /[\u007f-\uffff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
