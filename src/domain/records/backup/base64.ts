// Bytes as base64 text and back (RFC 4648, section 4).

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const codes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
const padding = '='.charCodeAt(0);
const noDigit = 255;
const digits = new Uint8Array(256).fill(noDigit);
codes.forEach((code, digit) => {
  digits[code] = digit;
});

/** Divides by three: a piece of bytes becomes a piece of text. */
const pieceBytes = 3 * 1024;

export function toBase64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += pieceBytes) {
    pieces.push(String.fromCharCode(...quartets(bytes.subarray(at, at + pieceBytes))));
  }
  return pieces.join('');
}

function quartets(bytes: Uint8Array): Uint8Array {
  const text = new Uint8Array(4 * Math.ceil(bytes.length / 3)).fill(padding);
  for (let from = 0, to = 0; from < bytes.length; from += 3, to += 4) {
    const left = bytes.length - from;
    const three =
      ((bytes[from] ?? 0) << 16) | ((bytes[from + 1] ?? 0) << 8) | (bytes[from + 2] ?? 0);
    for (let k = 0; k <= Math.min(3, left); k++) {
      text[to + k] = codes[(three >>> (18 - 6 * k)) & 63] ?? padding;
    }
  }
  return text;
}

/** The bytes of a base64 text, or null if it is not one: only exactly the text that `toBase64` makes is accepted. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % 4 !== 0) return null;
  const padded = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padded);
  const end = text.length - padded;
  let held = 0;
  let bits = 0;
  let to = 0;
  for (let k = 0; k < end; k++) {
    const digit = digits[text.charCodeAt(k)] ?? noDigit;
    if (digit === noDigit) return null;
    held = ((held << 6) | digit) & 0xfff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[to++] = held >>> bits;
    }
  }
  // Bits beyond the last byte must be zero, or several texts would mean the same.
  return (held & ((1 << bits) - 1)) === 0 ? bytes : null;
}
