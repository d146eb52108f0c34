// Checks photos and sounds as they are read.

import type { Attachment } from '../rack-records';
import { type FieldRules, fieldsOf, needed } from './field-rules';
import { attachmentIdRule, fileHeadRules } from './record-head';
import { Repairs } from './repairs';
import { isNewerShape, type LeftOut, leftOut } from './restore-record';
import { bad, oneOf, type Rule } from './value-rules';

export type RestoredAttachment =
  | {
      readonly kind: 'restored';
      readonly attachment: Attachment;
      readonly repairs: readonly string[];
    }
  | LeftOut;

/** Largest photo or sound, bytes: a photo is scaled down, a sound is a second long (chosen, no source). */
export const mostAttachmentBytes = 4 * 1024 * 1024;

/** Types that can hold no script, by kind. */
const typesOf: Readonly<Record<Attachment['kind'], readonly string[]>> = {
  photo: ['image/jpeg', 'image/png', 'image/webp'],
  sound: ['audio/wav'],
};

const bytesRule: Rule<Attachment['bytes']> = (stored) => {
  if (
    !(stored instanceof Uint8Array) ||
    stored.length === 0 ||
    stored.length > mostAttachmentBytes
  ) {
    return bad;
  }
  return stored.buffer instanceof ArrayBuffer ? (stored as Attachment['bytes']) : bad;
};

const attachmentRules: FieldRules<Attachment> = {
  shape: fileHeadRules.shape,
  id: needed(attachmentIdRule),
  pan: fileHeadRules.pan,
  at: fileHeadRules.at,
  kind: needed(oneOf(['photo', 'sound'])),
  type: needed(oneOf(Object.values(typesOf).flat())),
  bytes: needed(bytesRule),
};

const attachmentRule = fieldsOf(attachmentRules);

/** A valid photo or sound made from anything, or why there is none. Never throws. */
export function restoreAttachment(stored: unknown): RestoredAttachment {
  if (typeof stored !== 'object' || stored === null) return leftOut('no-record');
  if (isNewerShape((stored as { readonly shape?: unknown }).shape)) return leftOut('newer');
  const repairs = new Repairs();
  const attachment = attachmentRule(stored, repairs);
  if (attachment === bad) return leftOut('damaged', repairs.list);
  if (!typesOf[attachment.kind].includes(attachment.type)) return leftOut('damaged', ['type']);
  return { kind: 'restored', attachment, repairs: repairs.list };
}
