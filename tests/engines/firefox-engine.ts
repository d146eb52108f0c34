// Firefox without a window, spoken to over its own line.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { drivenPage } from './driver-commands';
import type { Engine, EngineSetup } from './engine';
import { connectMarionette } from './marionette';
import { startProcess } from './own-process';
import { until } from './until';

const startLimit = 60_000;
const quitLimit = 15_000;

export const firefoxEngine = (program: string): Engine => ({
  name: 'Firefox ESR',
  async start(setup) {
    const { profile, outbox, environment } = setup;
    mkdirSync(profile, { recursive: true });
    writeFileSync(join(profile, 'user.js'), preferencesText(setup));
    const portFile = join(profile, 'MarionetteActivePort');
    rmSync(portFile, { force: true });
    const child = startProcess(
      program,
      ['--headless', '--marionette', '--no-remote', '--profile', profile, 'about:blank'],
      environment,
    );
    try {
      const port = await until(
        'Firefox to start',
        () => existsSync(portFile) && Number(readFileSync(portFile, 'utf8')),
        startLimit,
      );
      const line = await connectMarionette(port);
      const version = await line.begin();
      return {
        version,
        ...drivenPage(line),
        printed: async () => pdfIn(outbox),
        async close() {
          // It hangs up while it goes, sometimes before it has answered.
          await line.quit().catch(() => undefined);
          await Promise.race([
            child.ended,
            new Promise((done) => setTimeout(done, quitLimit).unref()),
          ]);
          line.end();
          await child.stop();
        },
      };
    } catch (error) {
      await child.stop();
      throw error;
    }
  },
});

/** The printed file, once Firefox has finished it. */
function pdfIn(outbox: string): string | null {
  const name = readdirSync(outbox).find((each) => each.endsWith('.pdf'));
  if (name === undefined) return null;
  const path = join(outbox, name);
  return readFileSync(path).subarray(-1024).includes('%%EOF') ? path : null;
}

function preferencesText({ outbox }: EngineSetup): string {
  const preferences = {
    'marionette.port': 0,
    // The real microphone, without the question.
    'media.navigator.permission.disabled': true,
    'permissions.default.microphone': 1,
    'browser.download.folderList': 2,
    'browser.download.dir': outbox,
    'browser.download.useDownloadDir': true,
    'browser.download.alwaysOpenPanel': false,
    // What the page prints becomes a file, without the dialog.
    'print.always_print_silent': true,
    print_printer: 'Mozilla Save to PDF',
    'print.printer_Mozilla_Save_to_PDF.print_to_file': true,
    'print.printer_Mozilla_Save_to_PDF.print_to_filename': join(outbox, 'printed.pdf'),
  };
  return Object.entries(preferences)
    .map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`)
    .join('');
}
