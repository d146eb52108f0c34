// CRC-32 of text, as in Ethernet, gzip and PNG (IEEE 802.3; RFC 1952, section 8).

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** A checksum that grows with the text it is given. */
export class Crc32 {
  #value = 0xffffffff;

  /** One byte per character; a character beyond the first 256 (a backup has none) counts as two. */
  add(text: string): void {
    let value = this.#value;
    for (let k = 0; k < text.length; k++) {
      const code = text.charCodeAt(k);
      value = (value >>> 8) ^ (table[(value ^ code) & 0xff] ?? 0);
      if (code > 0xff) value = (value >>> 8) ^ (table[(value ^ (code >>> 8)) & 0xff] ?? 0);
    }
    this.#value = value;
  }

  /** Eight hexadecimal digits. */
  get text(): string {
    return ((this.#value ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
  }
}

/** The checksum of one text, eight hexadecimal digits. */
export function crc32Of(text: string): string {
  const sum = new Crc32();
  sum.add(text);
  return sum.text;
}
