// Names for new records that no other phone will ever make: random UUIDs (RFC 9562, version 4).
import type { Identities } from '../../domain/ports/phone-ports';

type Chance = Pick<Crypto, 'getRandomValues'> & Partial<Pick<Crypto, 'randomUUID'>>;

/** Browsers before 2022, and pages that did not come over HTTPS, make no UUIDs: then 16 random bytes become one here. */
export const browserIdentities = (chance: Chance = crypto): Identities => ({
  next: () => chance.randomUUID?.() ?? uuidOf(chance.getRandomValues(new Uint8Array(16))),
});

/** Version and variant stand in bits of their own (RFC 9562, section 5.4). */
function uuidOf(bytes: Uint8Array): string {
  const marked = bytes.map((byte, k) => {
    if (k === 6) return (byte & 0x0f) | 0x40;
    return k === 8 ? (byte & 0x3f) | 0x80 : byte;
  });
  const digits = Array.from(marked, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return digits.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
