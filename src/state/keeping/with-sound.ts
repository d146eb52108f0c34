// The sound that is kept with a reading, where that is wanted.
import type { Strike } from '../../domain/measurement/strike';
import type { Identities } from '../../domain/ports/phone-ports';
import {
  type Attachment,
  attachmentId,
  type ReadingRecord,
} from '../../domain/records/rack-records';
import { soundAttachment } from '../../domain/records/sound-attachment';
import type { ListenModel } from '../listening/listen-model';
import type { SettingsModel } from '../settings/settings-model';

export interface SoundKeeping {
  readonly listen: Pick<ListenModel, 'soundOf'>;
  readonly settings: Pick<SettingsModel, 'keepsSound'>;
  readonly identities: Identities;
}

export interface SoundedReading {
  readonly record: ReadingRecord;
  readonly attachments: readonly Attachment[];
}

/** The reading with the sound of `newest`, its last strike; without it where sounds are not kept or it is lost. */
export async function withSound(
  record: ReadingRecord,
  newest: Strike | undefined,
  { listen, settings, identities }: SoundKeeping,
): Promise<SoundedReading> {
  const sound = settings.keepsSound.value && newest ? await listen.soundOf(newest) : null;
  if (!sound) return { record, attachments: [] };
  const id = attachmentId(identities.next());
  const attachment = soundAttachment(sound, { id, pan: record.pan, at: record.at });
  return { record: { ...record, sound: id }, attachments: [attachment] };
}
