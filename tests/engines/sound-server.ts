// A microphone that plays what it is given, for every program on this machine that is told about it.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { seeded } from '../synthetic-sounds/sounds';
import { type OwnProcess, runToEnd, startProcess } from './own-process';
import { until } from './until';

/** Samples a second of the microphone and of all that is played into it. */
export const soundRate = 48_000;

export interface SoundServer {
  /** What a browser must be started with to hear it. */
  readonly environment: Readonly<Record<string, string>>;
  /** Plays a sound file into the microphone; resolves when it is over. */
  play(file: string): Promise<void>;
  stop(): Promise<void>;
}

const startLimit = 20_000;
const playLimit = 20_000;

/** Starts a sound server of its own, whose files are all in `folder`. Stop it in the end. */
export async function startSoundServer(folder: string): Promise<SoundServer> {
  const run = join(folder, 'run');
  const home = join(folder, 'home');
  mkdirSync(run, { mode: 0o700 });
  mkdirSync(home);
  const environment = {
    XDG_RUNTIME_DIR: run,
    XDG_CONFIG_HOME: home,
    XDG_CACHE_HOME: home,
    HOME: home,
    PULSE_SERVER: `unix:${join(run, 'pulse', 'native')}`,
  };
  const server = startProcess(
    'pulseaudio',
    [
      '--daemonize=no',
      '-n',
      '--use-pid-file=no',
      // Where it may: a microphone does not wait for others either.
      '--realtime=yes',
      '--high-priority=yes',
      // Without anybody to play or to listen it goes by itself, should nobody be left to stop it.
      '--exit-idle-time=20',
      '-L',
      'module-native-protocol-unix',
      '-L',
      `module-null-sink sink_name=pan rate=${soundRate}`,
      '-L',
      `module-null-sink sink_name=out rate=${soundRate}`,
      '-L',
      // WebKit takes no plain monitor for a microphone.
      'module-remap-source master=pan.monitor source_name=mic',
    ],
    environment,
  );
  let room: OwnProcess | null = null;
  const stop = async () => {
    await room?.stop();
    await server.stop();
  };
  try {
    const control = (...words: string[]) => runToEnd('pactl', words, environment, startLimit);
    await until(
      `the sound server (${server.said()})`,
      async () => {
        if (server.hasEnded()) return false;
        await control('set-default-source', 'mic');
        await control('set-default-sink', 'out');
        return true;
      },
      startLimit,
    );
    room = startProcess(
      'pacat',
      [
        '--playback',
        '--device=pan',
        '--raw',
        '--format=s16le',
        '--channels=1',
        `--rate=${soundRate}`,
      ],
      environment,
      Readable.from(quietRoom()),
    );
  } catch (error) {
    await stop();
    throw error;
  }
  return {
    environment,
    play: async (file) => {
      await runToEnd('paplay', ['--device=pan', file], environment, playLimit);
    },
    stop,
  };
}

/** A quiet room without an end, 16-bit samples: nothing but zeros would be a microphone that is switched off. */
function* quietRoom(): Generator<Buffer> {
  const random = seeded(3);
  const samples = new Int16Array(soundRate / 4);
  for (;;) {
    for (let n = 0; n < samples.length; n++) samples[n] = Math.round(6 * (random() - 0.5));
    yield Buffer.from(samples.slice().buffer);
  }
}
