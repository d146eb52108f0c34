// Listening to a sound file: it is read, and heard as fast as the ear can go.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { SoundFiles } from '../../domain/ports/sound-ports';
import type { EarUse } from './ear-use';
import { soundBlocks } from './sound-blocks';

/** What became of the last sound file. */
export type FileNotice =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'unreadable'; readonly why: 'empty' | 'not-sound' | 'too-long' }
  | { readonly kind: 'read'; readonly heard: number; readonly resampled: boolean };

export interface FileListening {
  readonly notice: ReadonlySignal<FileNotice>;
  open(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<void>;
  /** A strike was heard, in whatever is listened to. */
  count(): void;
  /** Something else is listened to. */
  forget(): void;
}

export function createFileListening(
  { ear, context, readout, taking, user, leavePan, closeMicrophone }: EarUse,
  soundFiles: SoundFiles,
): FileListening {
  const notice = signal<FileNotice>({ kind: 'none' });
  let heard = 0;
  return {
    notice,
    async open(file) {
      const isLatest = user.begin();
      leavePan();
      taking.from.value = 'file';
      context.practice.value = null;
      readout.clear();
      notice.value = { kind: 'reading' };
      await closeMicrophone();
      const result = await soundFiles.open(file);
      if (!isLatest()) return;
      if (result.kind === 'unreadable') {
        notice.value = result;
        return;
      }
      const { samples, sampleRate, resampled } = result.sound;
      heard = 0;
      taking.begin(sampleRate);
      context.tell();
      readout.startAnew();
      ear.begin(sampleRate);
      for (const block of soundBlocks(samples)) ear.feed(block);
      await ear.finish();
      if (!isLatest()) return;
      readout.endListening();
      notice.value = { kind: 'read', heard, resampled };
    },
    count() {
      heard++;
    },
    forget() {
      notice.value = { kind: 'none' };
    },
  };
}
