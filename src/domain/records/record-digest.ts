// A digest of a record, which it carries: it tells a record that was changed on its way from one that is whole.
import { canonicalText } from './canonical-text';
import type { RackRecord } from './rack-records';

/** The digest of plain data with all its fields but `digest` itself: sixteen hexadecimal digits. */
export function digestOf(record: object): string {
  const { digest: _, ...content } = record as { readonly digest?: unknown };
  return hash64(canonicalText(content));
}

/** The record with its digest: what is kept from now on can be told from what somebody makes of it. */
export const sealed = <T extends RackRecord>(record: T): T => ({
  ...record,
  digest: digestOf(record),
});

/** False if it carries a digest and has changed since. Records of older apps carry none, and nobody can tell. */
export const fitsDigest = (stored: object): boolean =>
  !('digest' in stored) || stored.digest === undefined || stored.digest === digestOf(stored);

/**
 * Two lanes of FNV-1a (RFC 9923) over the UTF-16 units of a text, with different beginnings and, in the second, two
 * steps a unit; each is mixed at the end as MurmurHash3 does (Appleby). It finds changes that happen, and those of
 * somebody who does not know about it; a forger can make a new digest, so a digest that fits is never trusted with
 * anything of value.
 */
function hash64(text: string): string {
  let one = 0x811c9dc5;
  let other = 0x9747b28c;
  for (let k = 0; k < text.length; k++) {
    const code = text.charCodeAt(k);
    one = Math.imul(one ^ code, prime);
    other = Math.imul(Math.imul(other ^ (code & 0xff), prime) ^ (code >>> 8) ^ k, prime);
  }
  return hex(mixed(one)) + hex(mixed(other));
}

/** The 32-bit FNV prime (RFC 9923). */
const prime = 0x01000193;

function mixed(value: number): number {
  let left = value;
  left = Math.imul(left ^ (left >>> 16), 0x85ebca6b);
  left = Math.imul(left ^ (left >>> 13), 0xc2b2ae35);
  return (left ^ (left >>> 16)) >>> 0;
}

const hex = (value: number): string => value.toString(16).padStart(8, '0');
