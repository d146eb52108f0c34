// The phone's own sounds and the microphone.
import { describe, expect, it } from 'vitest';
import { hertz } from '../../../src/domain/tuning/units';
import { createDeafPlayer } from '../../../src/state/listening/deaf-player';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { strikeSample } from '../../domain/reading/strike-sample';
import { fakePorts } from '../fake-ports';

const settle = () => new Promise((done) => setTimeout(done, 0));
const openMicrophone = { kind: 'listening', processing: [], sampleRate: 48_000 } as const;

function phone() {
  const fake = fakePorts();
  let waiting: (() => void)[] = [];
  const pause = () => new Promise<void>((resolve) => waiting.push(resolve));
  const listen = createListenModel({ ...fake.ports, pause });
  let end = (): void => undefined;
  const held = () => new Promise<void>((resolve) => (end = resolve));
  const player = createDeafPlayer({
    listen,
    player: { play: held, hold: held, stop: () => end() },
    pause,
  });
  const later = async () => {
    await settle();
    for (const go of waiting.splice(0)) go();
    waiting = [];
    await settle();
  };
  const open = async () => {
    await listen.listen();
    fake.microphoneIs(openMicrophone);
    await settle();
  };
  return { fake, listen, player, later, open };
}

describe('a sound of the phone itself', () => {
  it('ends when the microphone opens, and what it leaves in the room is no strike', async () => {
    const { fake, listen, player, later, open } = phone();
    let isOver = false;
    void player.hold(hertz(440)).then(() => {
      isOver = true;
    });
    await open();
    expect(isOver).toBe(true);
    fake.hear(strikeSample({ event: 1 }));
    expect(listen.last.value).toBeNull();
    // The loudspeaker lags, and what is heard is told later: two pauses.
    await later();
    fake.hear(strikeSample({ event: 2 }));
    expect(listen.last.value).toBeNull();
    await later();
    fake.hear(strikeSample({ event: 2 }));
    expect(listen.last.value).toBeNull();
    fake.hear(strikeSample({ event: 3 }));
    expect(listen.last.value?.strike.event).toBe(3);
  });

  it('that was over long ago keeps nothing from being heard', async () => {
    const { fake, listen, player, later, open } = phone();
    void player.hold(hertz(440));
    player.stop();
    await later();
    await open();
    fake.hear(strikeSample({ event: 1 }));
    expect(listen.last.value?.strike.event).toBe(1);
  });
});
