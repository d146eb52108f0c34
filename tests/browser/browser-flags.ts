// With which flags the tests start Chromium.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { floatWav } from '../synthetic-sounds/float-wav';

export interface FakeMicrophone {
  /** What the microphone hears from the moment it is opened. */
  readonly sound?: { readonly samples: Float32Array; readonly sampleRate: number };
  /** `denied`: the browser's own refusal. */
  readonly permission?: 'granted' | 'denied';
}

/** A microphone that plays the sound once, from a file in `folder`, and then nothing; without a sound, a silent one. */
export function microphoneFlags(
  folder: string,
  { sound, permission }: FakeMicrophone,
): readonly string[] {
  const file = join(folder, 'microphone.wav');
  const { samples, sampleRate } = sound ?? { samples: new Float32Array(480), sampleRate: 48_000 };
  // Without looping Chromium repeats the last 10 ms for ever: they must be silent.
  const tail = new Float32Array(samples.length + sampleRate);
  tail.set(samples);
  writeFileSync(file, floatWav(tail, sampleRate));
  return [
    '--use-fake-device-for-media-stream',
    permission === 'denied'
      ? '--use-fake-ui-for-media-stream=deny'
      : '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${file}%noloop`,
  ];
}

/**
 * Chromium draws the list below its address bar as two pages of its own and prepares them for every new window, also
 * where no window is seen: a whole second of processor for each test, measured with Chromium 156.
 */
const unseenPages = ['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup'];

/** What Playwright 1.65 turns off itself. Chromium takes the last list only, so that ours must repeat it. */
const offInPlaywright = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'TcpPortRandomizationWin',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
];

const quiet = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  // Chromium's sandbox does not start for root, as in a container.
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
];

/** For a browser that the test starts itself. */
export const ownQuietFlags = [...quiet, `--disable-features=${unseenPages.join()}`];

/** For a browser that Playwright starts. */
export const quietFlags = [
  ...quiet,
  `--disable-features=${[...offInPlaywright, ...unseenPages].join()}`,
];
