// Plays the kept sound of a reading, so that before and after can be heard one after the other.
import type { PanStore } from '../../domain/ports/pan-store';
import type { SoundFiles, Speaker } from '../../domain/ports/sound-ports';
import type { AttachmentId } from '../../domain/records/rack-records';
import type { ListenModel } from './listen-model';

export interface SoundPlayer {
  /** `missing`: it is not on this phone, or cannot be read any more. */
  play(id: AttachmentId): Promise<'played' | 'missing'>;
  /** Lets the ear hear it like a sound file, so that one can look inside; `unheard`: no strike was found in it. */
  hear(id: AttachmentId): Promise<'heard' | 'unheard' | 'missing'>;
}

export function createSoundPlayer(ports: {
  readonly store: Pick<PanStore, 'attachment'>;
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
  readonly listen: Pick<ListenModel, 'openFile' | 'last'>;
}): SoundPlayer {
  const fileOf = async (id: AttachmentId) => {
    const loaded = await ports.store.attachment(id);
    if (loaded.kind === 'trouble' || !loaded.value) return null;
    const { bytes } = loaded.value;
    return { arrayBuffer: async () => bytes.slice().buffer };
  };
  return {
    async hear(id) {
      const file = await fileOf(id);
      if (!file) return 'missing';
      const before = ports.listen.last.value;
      await ports.listen.openFile(file);
      const { value } = ports.listen.last;
      return value && value !== before ? 'heard' : 'unheard';
    },
    async play(id) {
      const file = await fileOf(id);
      if (!file) return 'missing';
      const opened = await ports.soundFiles.open(file);
      if (opened.kind === 'unreadable') return 'missing';
      ports.speaker.play(opened.sound.samples, opened.sound.sampleRate);
      return 'played';
    },
  };
}
