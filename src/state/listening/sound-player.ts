// Plays the kept sound of a reading, so that before and after can be heard one after the other.
import type { PanStore } from '../../domain/ports/pan-store';
import type { SoundFiles, Speaker } from '../../domain/ports/sound-ports';
import type { AttachmentId } from '../../domain/records/rack-records';

export interface SoundPlayer {
  /** `missing`: it is not on this phone, or cannot be read any more. */
  play(id: AttachmentId): Promise<'played' | 'missing'>;
}

export function createSoundPlayer(ports: {
  readonly store: Pick<PanStore, 'attachment'>;
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
}): SoundPlayer {
  return {
    async play(id) {
      const loaded = await ports.store.attachment(id);
      if (loaded.kind === 'trouble' || !loaded.value) return 'missing';
      const { bytes } = loaded.value;
      const opened = await ports.soundFiles.open({ arrayBuffer: async () => bytes.slice().buffer });
      if (opened.kind === 'unreadable') return 'missing';
      ports.speaker.play(opened.sound.samples, opened.sound.sampleRate);
      return 'played';
    },
  };
}
