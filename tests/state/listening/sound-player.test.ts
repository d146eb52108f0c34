import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { attachmentId, panId } from '../../../src/domain/records/rack-records';
import { soundAttachment } from '../../../src/domain/records/sound-attachment';
import { instant } from '../../../src/domain/tuning/units';
import { readWav } from '../../../src/dsp/read-wav';
import { createSoundPlayer } from '../../../src/state/listening/sound-player';
import type { LastStrike } from '../../../src/state/listening/taking-now';
import { strikeSample } from '../../domain/reading/strike-sample';
import { memoryPanStore } from '../memory-pan-store';

async function playerWith(samples: readonly number[], found: LastStrike | null = null) {
  const last = signal<LastStrike | null>(null);
  const opened: number[] = [];
  const memory = memoryPanStore();
  const sound = { samples: Float32Array.from(samples), sampleRate: 8000 };
  const head = { id: attachmentId('a'), pan: panId('p'), at: instant(0) };
  await memory.store.keep([], [soundAttachment(sound, head)]);
  const played: { samples: Float32Array; rate: number }[] = [];
  const player = createSoundPlayer({
    store: memory.store,
    soundFiles: {
      async open(file) {
        const wav = readWav(await file.arrayBuffer());
        if (wav.kind === 'not-wav') return { kind: 'unreadable', why: 'not-sound' };
        const { samples: read, sampleRate } = wav;
        return { kind: 'opened', sound: { samples: read, sampleRate, resampled: false } };
      },
    },
    speaker: { play: (read, rate) => void played.push({ samples: read, rate }) },
    listen: {
      last,
      async openFile(file) {
        opened.push((await file.arrayBuffer()).byteLength);
        if (found) last.value = found;
      },
    },
  });
  return { player, played, opened };
}

describe('the kept sound of a reading', () => {
  it('is heard like a sound file to be looked into, and says when no strike was found in it', async () => {
    const found = { strike: strikeSample(), from: 'file', isOnPan: false } as const;
    const { player, opened } = await playerWith([0, 0.5, 0], found);
    expect(await player.hear(attachmentId('a'))).toBe('heard');
    expect(opened).toHaveLength(1);
    // Nothing new was found: the strike that was there before is another one.
    expect(await player.hear(attachmentId('a'))).toBe('unheard');
    expect(await player.hear(attachmentId('none'))).toBe('missing');
  });

  it('is played as it was heard, to the step of 16 bits', async () => {
    const heard = [0, 0.5, -0.25, 1, -1, 2];
    const { player, played } = await playerWith(heard);
    expect(await player.play(attachmentId('a'))).toBe('played');
    expect(played[0]?.rate).toBe(8000);
    for (const [k, value] of heard.entries()) {
      const limited = Math.max(-1, Math.min(1, value));
      expect(Math.abs((played[0]?.samples[k] ?? 9) - limited)).toBeLessThan(1 / 16_000);
    }
  });

  it('that is not on this phone is said to be missing', async () => {
    const { player, played } = await playerWith([0]);
    expect(await player.play(attachmentId('b'))).toBe('missing');
    expect(played).toEqual([]);
  });
});
