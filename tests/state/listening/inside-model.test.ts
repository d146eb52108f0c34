// Looking inside the newest strike: never while listening, and never its own sound.
import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import type { CutSound } from '../../../src/domain/measurement/cut-sound';
import type { StrikeInside } from '../../../src/domain/measurement/strike-inside';
import { seconds } from '../../../src/domain/tuning/units';
import { createInsideModel } from '../../../src/state/listening/inside-model';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { strikeSample } from '../../domain/reading/strike-sample';
import { fakePorts } from '../fake-ports';

const openMicrophone = { kind: 'listening', processing: [], sampleRate: 48_000 } as const;
const sound: CutSound = { samples: new Float32Array(48_000), sampleRate: 48_000 };
const inside: StrikeInside = { parts: [], seconds: seconds(0.9), soundOf: () => sound };

async function struck() {
  const fake = fakePorts();
  let quiet = (): void => undefined;
  const pause = () =>
    new Promise<void>((resolve) => {
      quiet = resolve;
    });
  const listen = createListenModel({ ...fake.ports, pause });
  await listen.listen();
  fake.microphoneIs(openMicrophone);
  fake.hear(strikeSample());
  const log: string[] = [];
  let end = (): void => undefined;
  const player = {
    play: () => {
      log.push(`plays, microphone ${listen.isListening.value ? 'open' : 'closed'}`);
      return new Promise<void>((resolve) => {
        end = resolve;
      });
    },
    hold: async () => undefined,
    stop: () => {
      log.push('stops');
      end();
    },
  };
  const soundOf = signal<CutSound | null>(sound);
  const model = createInsideModel({
    listen: { ...listen, soundOf: async () => soundOf.value },
    player,
    takeApart: async () => () => inside,
  });
  return { fake, listen, model, log, soundOf, endSound: () => end(), quietNow: () => quiet() };
}

describe('looking inside', () => {
  it('takes the newest strike apart, also after listening has ended', async () => {
    const { listen, model } = await struck();
    await listen.stop();
    await model.open();
    expect(model.view.value).toMatchObject({ kind: 'open', from: 'microphone' });
  });

  it('says so when there was no strike, and when its sound is gone', async () => {
    const { listen, model, soundOf } = await struck();
    soundOf.value = null;
    await model.open();
    expect(model.view.value.kind).toBe('gone');
    await listen.listen();
    await model.open();
    expect(model.view.value.kind).toBe('none');
  });

  it('closes the microphone before it plays', async () => {
    const { fake, model, log, endSound } = await struck();
    await model.open();
    const played = model.play('octave', 'alone', 1);
    fake.microphoneIs({ kind: 'idle' });
    await expect.poll(() => log.at(-1)).toBe('plays, microphone closed');
    expect(model.playing.value).toEqual({ part: 'octave', which: 'alone' });
    endSound();
    await played;
    expect(model.playing.value).toBeNull();
  });

  it('takes what the room still holds of the played sound for no strike when listening goes on', async () => {
    const { fake, listen, model, log, quietNow } = await struck();
    await model.open();
    void model.play('octave', 'both', 2);
    fake.microphoneIs({ kind: 'idle' });
    await model.listenAgain(listen.listen);
    expect(log.at(-1)).toBe('stops');
    fake.microphoneIs(openMicrophone);
    fake.hear(strikeSample({ event: 1 }));
    expect(listen.phase.value.kind).toBe('listening');
    expect(listen.last.value).toBeNull();
    quietNow();
    await Promise.resolve();
    fake.hear(strikeSample({ event: 2 }));
    expect(listen.last.value?.strike.event).toBe(2);
  });
});
