// What the phone plays comes back through its own microphone, into the real ear: it is never a reading.
import { describe, expect, it } from 'vitest';
import { AnalysisSession } from '../../../src/analysis/session/analysis-session';
import type { Ear } from '../../../src/domain/ports/ear-port';
import type { TonePlayer } from '../../../src/domain/ports/sound-ports';
import { type Hertz, hertz, seconds } from '../../../src/domain/tuning/units';
import { heldAmplitude } from '../../../src/dsp/partial-sound/equal-loudness';
import { takeApart } from '../../../src/dsp/partial-sound/take-apart';
import { createDeafPlayer } from '../../../src/state/listening/deaf-player';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { plantedStrike, rate, struckAt } from '../../dsp/partial-sound/planted-parts';
import { fakePorts } from '../fake-ports';

const settle = () => new Promise((done) => setTimeout(done, 0));
const planted = plantedStrike(3, 293.66);
const inside = takeApart(
  planted.strike,
  { samples: planted.sound, sampleRate: rate },
  seconds(struckAt),
);
const silenceOf = (length: number) => new Float32Array(Math.round(length * rate));

/** Time goes by as sound comes in: the pauses end by it. `isDeaf`: as the app is; else a player nobody listens for. */
function phone(isDeaf: boolean) {
  const fake = fakePorts();
  let now = 0;
  let waiting: { readonly at: number; readonly go: () => void }[] = [];
  const pause = (length: number) =>
    new Promise<void>((go) => {
      waiting.push({ at: now + length, go });
    });
  let hear: Parameters<Ear['onHeard']>[0] = () => undefined;
  const session = new AnalysisSession((message) => {
    if (message.type === 'heard') hear(message.heard);
  });
  const ear: Ear = {
    ...fake.ports.ear,
    onHeard(listener) {
      hear = listener;
      return () => undefined;
    },
    setContext: (context) => session.handle({ type: 'context', context }),
  };
  const listen = createListenModel({ ...fake.ports, ear, pause });
  let end = (): void => undefined;
  const sounds = () =>
    new Promise<void>((resolve) => {
      end = resolve;
    });
  const player: TonePlayer = { play: sounds, hold: sounds, stop: () => end() };
  const open = async () => {
    await listen.listen();
    session.handle({ type: 'begin', sampleRate: rate });
    fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: rate });
    await settle();
  };
  /** In blocks of 10 ms, as they come from the microphone. */
  const room = async (sound: Float32Array) => {
    const block = rate / 100;
    for (let from = 0; from < sound.length; from += block) {
      session.handle({ type: 'samples', samples: sound.slice(from, from + block) });
      now += 0.01;
      const due = waiting.filter(({ at }) => at <= now);
      waiting = waiting.filter(({ at }) => at > now);
      for (const { go } of due) go();
      if (due.length > 0) await settle();
    }
  };
  return {
    listen,
    open,
    room,
    player: isDeaf ? createDeafPlayer({ listen, player, pause }) : player,
  };
}

/** The tone as it is held, its start as soft as the app's (a time constant of 30 ms), until it is stopped. */
const heldTone = (hz: Hertz, length: number): Float32Array =>
  Float32Array.from(
    { length: Math.round(length * rate) },
    (_, n) =>
      heldAmplitude(hz) *
      (1 - Math.exp(-n / rate / 0.03)) *
      Math.sin((2 * Math.PI * hz * n) / rate),
  );

/** The loudspeaker lags so far behind, s: nearly as far as the app allows for. */
const lag = 0.4;

describe('what the phone plays', () => {
  it.each([
    ['the fundamental', inside.soundOf('fundamental', 'alone', 1).samples],
    ['the octave and its target', inside.soundOf('octave', 'both', 1).samples],
    ['the target tone', heldTone(hertz(293.66), 1)],
  ])('and hears again, %s, is no reading, and the next strike is', async (_, sound) => {
    const { listen, open, room, player } = phone(true);
    void player.hold(hertz(293.66));
    await open();
    await room(silenceOf(0.05));
    await room(sound.slice(0, Math.round(lag * rate)));
    await room(silenceOf(1.2));
    expect(listen.last.value).toBeNull();
    expect(listen.phase.value.kind).toBe('listening');
    await room(planted.sound);
    await room(silenceOf(0.5));
    expect(listen.last.value?.strike.note).toBe(planted.strike.note);
  });

  it('would be a reading if nobody were deaf to it: the check above can fail', async () => {
    const { listen, open, room, player } = phone(false);
    const sound = inside.soundOf('fundamental', 'alone', 1).samples;
    void player.hold(hertz(293.66));
    await open();
    await room(silenceOf(0.05));
    await room(sound.slice(0, Math.round(lag * rate)));
    await room(silenceOf(1.2));
    expect(listen.last.value).not.toBeNull();
  });
});
