// A photo as it is kept.
import { type Attachment, attachmentId, type PanId } from '../../domain/records/rack-records';
import type { HeadPorts } from './new-head';

/** A photo and the field that names it. */
export function photoOf(
  bytes: Uint8Array<ArrayBuffer>,
  pan: PanId,
  { clock, identities }: Pick<HeadPorts, 'clock' | 'identities'>,
): Attachment {
  const id = attachmentId(identities.next());
  return { shape: 1, id, pan, at: clock.now(), kind: 'photo', type: 'image/jpeg', bytes };
}
